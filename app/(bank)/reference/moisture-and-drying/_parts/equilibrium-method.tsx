import { MethodFoldOut } from '../../_parts/method-fold-out';

/** The equilibrium equation: for both questions asked of it. */
export function EquilibriumMethod() {
  return (
    <MethodFoldOut
      page="moisture.md"
      equation={
        <p>
          <i>M</i> = (1 − <i>D</i>) √(−440 ln(1 − <i>R</i>)) / (1.1 + <i>T</i>/90): moisture <i>M</i> in percent of dry
          weight, oil <i>D</i> as a share of dry weight, relative humidity <i>R</i> from 0 to 1, <i>T</i> in °C. Shown
          as percent of fresh weight, 100 <i>M</i>/(100 + <i>M</i>). Solved for <i>R</i> or <i>T</i> where the air is
          asked for.
        </p>
      }
      limits={
        <p>
          One curve for every species; its range of validity is not known. Not used above <i>R</i> = 0.95. Seed that is
          drying holds about a point more than seed that takes up water. It says where seed ends, not how soon: days in
          a thin layer, weeks in a jar.
        </p>
      }
      source={
        <p>
          Cromarty, Ellis & Roberts 1982, The Design of Seed Storage Facilities (from memory, not seen). Oil of each
          crop: from memory.
        </p>
      }
      checked={
        <>
          <p>
            R, 216 combinations of air and oil: to 12 figures; temperatures against R’s root finding: within 10⁻⁹ °C.
          </p>
          <p>
            A recalled table of 25 vegetables at 25 °C (166 figures, said to be Harrington 1960): 0.94 points apart on
            the whole, the equation 0.4 higher; 3.1 at worst (beet at 75 %).
          </p>
        </>
      }
    />
  );
}
