import { DateField, NumberField, SelectField } from '@/app/_components/form/fields';
import { ISOLATIONS } from '@/lib/domain/pollination/isolation';

interface Props {
  today: string;
  lot?: { harvestedOn: string; isolation: string; plantsHarvested: number | null; generation: number };
}

/** How the seed was grown. */
export function LotFields({ today, lot }: Props) {
  return (
    <>
      <DateField
        name="harvestedOn"
        label="Harvested on"
        hint="The last day, where there were several."
        max={today}
        defaultValue={lot?.harvestedOn}
      />
      <SelectField
        name="isolation"
        label="Isolation"
        hint="How it was kept true while it flowered."
        empty="Choose …"
        options={ISOLATIONS.map(({ key, label }) => ({ value: key, label }))}
        defaultValue={lot?.isolation}
      />
      <NumberField
        whole
        name="plantsHarvested"
        label="Plants harvested"
        hint="From how many plants the seed was taken."
        optional
        defaultValue={lot?.plantsHarvested}
      />
      <NumberField
        whole
        name="generation"
        label="Regrowings"
        hint="Since the seed first came to the bank; 0 is as received."
        optional
        defaultValue={lot?.generation}
      />
    </>
  );
}
