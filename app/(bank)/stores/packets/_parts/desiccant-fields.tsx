import { DateField, NumberField, SelectField } from '@/app/_components/form/fields';
import { DESICCANTS } from '@/lib/domain/stock/desiccants';

interface Props {
  /** said when nothing is chosen */
  none: string;
}

/** What keeps it dry in there, how much of it, and when to look at it next. */
export function DesiccantFields({ none }: Props) {
  return (
    <>
      <SelectField
        name="desiccant"
        label="Desiccant"
        empty={none}
        options={DESICCANTS.map(({ key, label, changeAfterDays }) => ({
          value: key,
          label: `${label} (${Math.round(changeAfterDays / 30.4)} months)`,
        }))}
      />
      <NumberField name="desiccantGrams" label="How much of it" unit="g" optional />
      <DateField name="changeDueOn" label="Change it on" hint="Empty: after the usual time for its kind." optional />
    </>
  );
}
