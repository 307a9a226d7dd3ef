import { COMMON_TEMPERATURE_COEFFICIENTS } from '@/lib/domain/reference/longevity-constants';
import { MethodFoldOut } from '../../_parts/method-fold-out';

export function ExperimentMethod() {
  const { CH, CQ, mark } = COMMON_TEMPERATURE_COEFFICIENTS;
  return (
    <MethodFoldOut
      page="storage-experiment.md"
      equation={
        <>
          <p>
            Φ⁻¹(<i>P</i>) = <i>K</i> − <i>p/σ</i> with log₁₀ <i>σ</i> = <i>KE</i> − <i>CW</i> log₁₀ <i>m</i> −{' '}
            <i>CH t</i> − <i>CQ t</i>²: <i>P</i> the share alive after <i>p</i> days at <i>m</i> percent moisture (fresh
            weight) and <i>t</i> °C, <i>K</i> of each lot, the four constants common to all.
          </p>
          <p>
            Greatest likelihood for all counts at once. Standard errors from the expected information; where the counts
            scatter more than chance allows (Pearson’s chi-square, less than 5 in 100) they are multiplied by the root
            of chi-square over its degrees of freedom.
          </p>
        </>
      }
      limits={
        <p>
          Only conditions that were tried are safe to speak of; below about 3 % and above about 15 % moisture the
          equation changes, and it promises too much in long cold storage. Seed that is dead, hard or dormant from the
          start bends the curve. A rate is only seen where a good part of the seed has died.
        </p>
      }
      source={
        <p>
          Ellis & Roberts 1980, Ann. Bot. 45:13–30 (form from memory). CH = {CH} and CQ = {CQ}: {mark}, Dickie and
          others 1990, Ann. Bot. 65:197–204, who found that they do not differ among eight species (read). Widening of
          standard errors: Finney 1971, Probit Analysis (from memory).
        </p>
      }
      checked={
        <p>
          R’s glm and an own search in R on sixteen simulated experiments: constants within 3 × 10⁻¹⁵, covariances
          within 2 × 10⁻¹⁰ (relative). 600 more, simulated with published constants: nineteen in twenty intervals held
          them.
        </p>
      }
    />
  );
}
