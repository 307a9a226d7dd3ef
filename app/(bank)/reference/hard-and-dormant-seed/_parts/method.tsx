import { MethodFoldOut } from '../../_parts/method-fold-out';

export function Method() {
  return (
    <MethodFoldOut
      page="hard-and-dormant-seed.md"
      equation={
        <p>
          Side samples: found = (normal + Σ <i>H g/m</i>)/<i>N</i>; of <i>N</i> seeds set <i>H</i> stayed hard (or
          fresh), <i>m</i> were looked at, <i>g</i> alive. The interval holds all <i>A</i> with (found − <i>A</i>)² ≤{' '}
          <i>z</i>² [<i>A</i>(1 − <i>A</i>) + Σ <i>h θ</i>(1 − <i>θ</i>)(<i>H/m</i> − 1)]/<i>N</i>, where <i>h</i>{' '}
          (share hard) and <i>θ</i> (alive of them) are most likely given <i>A</i>. Dormant share: alive less
          germinated, with Newcombe’s interval.
        </p>
      }
      limits={
        <p>
          The seeds looked at must be picked blindly from those left. Seed that a treatment kills counts as dead.
          Stained seed that would give an abnormal seedling is alive but does not germinate. Firm seed may be dead.
        </p>
      }
      source={
        <p>
          Classes: 7 CFR 201.56, 201.57 and 201.57a (2015). Wilson 1927; Newcombe 1998, Statistics in Medicine
          17:873–890 (cited from memory). The interval of side samples extends Wilson’s: our own.
        </p>
      }
      checked={
        <p>
          R: 36 combinations of side samples, 72 of differences. In simulations the interval of side samples held the
          truth 95 to 97 times in 100.
        </p>
      }
    />
  );
}
