import { MethodFoldOut } from '../../_parts/method-fold-out';

export function Method() {
  return (
    <MethodFoldOut
      page="seeds-to-test.md"
      equation={
        <>
          <p>
            In groups: go on while <i>cn</i> − <i>a</i> &lt; germinated &lt; <i>cn</i> + <i>b</i> of <i>n</i> tested;{' '}
            <i>c</i> is the germination at which the poor and the good lot are equally likely. <i>a</i>, <i>b</i> and
            the last cut are the narrowest whose exact error rates keep the limits. Rates come from carrying the chance
            of every count from look to look.
          </p>
          <p>
            In one test: the lowest count that a lot at the line reaches no more often than allowed, and the fewest
            seeds from which a good lot always reaches it often enough; exact binomial tails.
          </p>
          <p>Width: half of the interval’s width, in the mean over the counts to be expected, or at worst.</p>
        </>
      }
      limits={
        <>
          <p>
            Seeds count as a fair sample, each by itself. Where dishes differ by more than chance, errors are more
            frequent than stated.
          </p>
          <p>
            Lots near the line may go either way: that is what “tell apart” gives up. Decide at every look, and only
            there. After a stop the plain share leans away from the line; the table says by how much.
          </p>
        </>
      }
      source={
        <p>
          Shape of the limits: Wald 1945, Ann. Math. Statist. 16:117–186 (from memory); the search and the grouping are
          our own. Printed plan: genebank manual of 2006, flowchart 8.1, its rows at 40 and 80 seeds (published); rows
          120 to 400 from memory. Its error rates are computed here, not printed. Estimate after a stop: Girshick,
          Mosteller & Savage 1946 (from memory).
        </p>
      }
      checked={
        <p>
          R, which counts every way to each stop: all chances within a relative 10⁻¹⁰, down to 10⁻²⁹⁰. Single tests: the
          same numbers as R finds by trying every size up to 6000. Widths within 10⁻⁹.
        </p>
      }
    />
  );
}
