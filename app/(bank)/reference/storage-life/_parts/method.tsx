import { MethodFoldOut } from '../../_parts/method-fold-out';

export function Method() {
  return (
    <MethodFoldOut
      page="storage-life.md"
      equation={
        <>
          <p>
            <i>v = K − p/σ</i>, log₁₀ <i>σ = KE − CW</i> log₁₀ <i>m − CH t − CQ t²</i>; <i>v</i> and <i>K</i> are
            probits of viability now and at first, <i>p</i> days, <i>σ</i> the days in which one probit is lost,{' '}
            <i>m</i> percent moisture of fresh weight, <i>t</i> °C.
          </p>
          <p>
            Days from <i>K</i>₀ to <i>K</i>₁: <i>σ</i>(<i>K</i>₀ − <i>K</i>₁). Solved for <i>m</i> or <i>t</i> it gives
            what reaches a goal. Stretches of storage add up.
          </p>
        </>
      }
      limits={
        <>
          <p>
            Moisture is held at the low-moisture limit; above 15 % and for seed that dies when dried there is no answer;
            above 14 % no store below 0 °C is named.
          </p>
          <p>
            Long cold storage: too hopeful, as old collections show. Open, mild storage: it has been too gloomy by 2.5
            to 6 times. A store is taken as steady; what its readings amount to is said below the map.
          </p>
        </>
      }
      source={
        <p>
          Ellis & Roberts 1980, Ann. Bot. 45:13–30 (form from memory); low-moisture limit: Ellis, Hong & Roberts 1989,
          Ann. Bot. 63:601–611 (published); half-lives seen: Solberg et al. 2020, Front. Plant Sci. 11:1007 (published);
          −30 to 45 °C and the usual stores: our own choice.
        </p>
      }
      checked={
        <p>
          R: 864 lives (largest relative difference 3 × 10⁻¹⁵), 2730 goals solved by root finding (3 × 10⁻¹² °C, 3 ×
          10⁻¹³ %), 216 histories (3 × 10⁻¹⁴); lines of the map within 0.07 % of the equation. The equation itself
          misses published storage lives by far more: see the page on it.
        </p>
      }
    />
  );
}
