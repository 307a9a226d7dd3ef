import { FieldMessage } from '@/app/_components/form/field-message';
import { CheckField, HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { Notice } from '@/app/_components/notice';
import { formatDate } from '@/app/_format/figures';
import { seedsFound } from '@/lib/domain/germination/bench/tray-count';
import type { TrayPage } from '@/lib/server/queries/tray-page';
import { seenCounts } from '@/lib/server/trays/seen-counts';
import { writeCounts } from '../actions';
import { ClassBoxes } from './class-boxes';

/** A row for each dish with what was found on one day. */
export function DayForm({ tray, on, today }: { tray: TrayPage; on: string; today: string }) {
  const ofDay = tray.states.map((state) => state.days.find((day) => day.on === on));
  const standing = ofDay.filter((day) => day !== undefined);
  return (
    <>
      <form className="flex flex-wrap items-end gap-3" aria-label="Choose the day">
        <label className="grid gap-1">
          <span className="font-semibold">Day of the count</span>
          <input
            key={on}
            type="date"
            name="on"
            defaultValue={on}
            min={tray.setOn}
            max={today}
            className="field figures"
          />
        </label>
        <button type="submit" className="button">
          Show this day
        </button>
      </form>
      <Form key={on} action={writeCounts} className="sheet grid gap-5">
        <HiddenField name="trayId" value={tray.id} />
        <HiddenField name="on" value={on} />
        <VersionField version={seenCounts(tray.allStanding.filter((day) => day.on === on))} />
        <p className="max-w-prose">
          What was found and taken out on <b>{formatDate(on)}</b>, not the total so far. Leave the row of a dish empty
          that was not looked at; write 0 where nothing was found.
        </p>
        <FieldMessage name="on" />
        {standing.some(({ disagree }) => disagree) && (
          <Notice kind="caution">Counts of this day disagree. What you save takes the place of all of them.</Notice>
        )}
        {tray.states.map(({ dish, remaining }, index) => {
          const found = ofDay[index]?.found ?? null;
          // Free for this day: what lies there, and what the day itself has taken out.
          const most = remaining + (found ? seedsFound(found) : 0);
          return (
            <fieldset key={dish.id} className="grid gap-1 border-b border-rule pb-4">
              <legend className="font-semibold">
                Dish {dish.position} <span className="quiet font-normal">at most {most} on this day</span>
              </legend>
              <ClassBoxes prefix={`dishes.${dish.id}`} found={found} />
            </fieldset>
          );
        })}
        <CheckField
          name="restDead"
          label="What is left is dead"
          hint="At the final count: every seed that still lies there is counted as dead."
        />
        <TextField name="countedBy" label="Counted by" hint="If it was somebody else." optional className="max-w-sm" />
        <div>
          <SubmitButton>Save the counts</SubmitButton>
        </div>
      </Form>
    </>
  );
}
