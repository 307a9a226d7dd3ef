import {
  CheckField,
  DateField,
  NumberField,
  SelectField,
  TextAreaField,
  TextField,
} from '@/app/_components/form/fields';
import { STORE_KINDS } from '@/lib/domain/stock/store-kinds';

interface Props {
  /** stores that a new one may lie in; one that is there already is moved, not changed */
  places?: { id: string; name: string }[];
  store?: {
    name: string;
    kind: string;
    parentId: string | null;
    inheritsTarget: boolean;
    capacityPackets: number | null;
    closedOn: string | null;
    targetTemperatureC: number;
    targetRelativeHumidity: number | null;
    notes: string | null;
  };
}

/** What is known of a store: the same fields whether it is new or changed. */
export function StoreFields({ places = [], store }: Props) {
  const humidity = store?.targetRelativeHumidity;
  return (
    <>
      <div className="grid gap-5 sm:grid-cols-2">
        <TextField name="name" label="Name" hint="As it is written on the door or shelf." defaultValue={store?.name} />
        <SelectField
          name="kind"
          label="Kind"
          empty="Choose …"
          options={STORE_KINDS.map(({ key, label }) => ({ value: key, label }))}
          defaultValue={store?.kind}
        />
      </div>
      {places.length > 0 && (
        <SelectField
          name="parentId"
          label="Lies in"
          hint="A shelf in a freezer takes the freezer's readings."
          optional
          empty="no other store"
          options={places.map((place) => ({ value: place.id, label: place.name }))}
          defaultValue={store?.parentId}
        />
      )}
      {(places.length > 0 || store?.parentId) && (
        <CheckField
          name="inheritsTarget"
          label="As cold and dry as what it lies in"
          hint="A box or shelf: it has no setting of its own, and the two fields below do not count."
          checkedByDefault={store?.inheritsTarget}
        />
      )}
      <div className="grid gap-5 sm:grid-cols-2">
        <NumberField
          name="targetTemperatureC"
          label="Temperature"
          hint="Meant to be kept; counts where nothing was logged."
          unit="°C"
          optional={places.length > 0 || Boolean(store?.parentId)}
          defaultValue={store?.targetTemperatureC}
        />
        <NumberField
          name="targetHumidityPercent"
          label="Humidity of the air"
          hint="Needed for seed in open containers."
          unit="%"
          optional
          defaultValue={humidity == null ? undefined : Number((humidity * 100).toPrecision(6))}
        />
      </div>
      {store && (
        <DateField
          name="setSince"
          label="Set so since"
          hint="The day on which it was set anew. Left empty, what was written before was wrong and is corrected."
          optional
        />
      )}
      <div className="grid gap-5 sm:grid-cols-2">
        <NumberField
          name="capacityPackets"
          label="Room for"
          hint="With those in boxes inside it. You are warned when it is full."
          unit="packets"
          whole
          optional
          defaultValue={store?.capacityPackets}
        />
        {store && (
          <DateField
            name="closedOn"
            label="No longer used since"
            hint="It must be empty; it then takes nothing in."
            optional
            defaultValue={store.closedOn}
          />
        )}
      </div>
      <TextAreaField name="notes" label="Notes" optional defaultValue={store?.notes} />
    </>
  );
}
