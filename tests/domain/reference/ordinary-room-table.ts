import { CROPS } from '../../../lib/domain/reference/all-crops';
import { getLongevityConstants } from '../../../lib/domain/reference/longevity-constants';
import { checkOrdinaryRoom } from '../../../lib/domain/reference/ordinary-room-check';

/** The table of docs/methods/reference-facts.md, computed: one row per crop. */
export function ordinaryRoomTable(): string[] {
  return CROPS.map((crop) => {
    const check = checkOrdinaryRoom(crop);
    if (!check.ok) throw new Error(`${crop.name}: ${check.reason}`);
    const constants = `${getLongevityConstants(crop.longevityConstantsKey).name}${crop.constantsBorrowed ? ', borrowed' : ', own'}`;
    const life = crop.facts.find((fact) => fact.kind === 'storage life');
    const cells = [
      crop.name,
      constants,
      check.oilFraction.toFixed(3),
      check.moisturePercent.toFixed(1),
      check.yearsPerProbit.toFixed(1),
      `${check.storageLife.lower}-${check.storageLife.upper}${life?.mark === 'from memory' ? ' (recalled)' : ''}`,
      `${check.ratio.toFixed(2)}${check.withinTolerance ? '' : ' outside'}`,
    ];
    return `| ${cells.join(' | ')} |`;
  });
}
