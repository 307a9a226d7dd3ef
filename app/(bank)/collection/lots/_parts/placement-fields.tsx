import { NumberField, SelectField } from '@/app/_components/form/fields';
import { StoreAnywayField } from '@/app/_components/form/store-anyway-field';
import { formatTemperature } from '@/app/_format/figures';
import { CONTAINERS } from '@/lib/domain/stock/containers';

interface Props {
  stores: { id: string; name: string; targetTemperatureC: number }[];
  placement?: { storeId: string; container: string; moisturePercent: number | null } | null;
}

const CONTAINER_OPTIONS = CONTAINERS.map(({ key, label, hermetic }) => ({
  value: key,
  label: `${label} (${hermetic ? 'keeps its moisture' : 'lets air in'})`,
}));

/** Where a packet lies and in what: the same fields for new seed and for a packet that is moved. */
export function PlacementFields({ stores, placement }: Props) {
  return (
    <>
      <SelectField
        name="storeId"
        label="Store"
        empty="Choose …"
        options={stores.map((store) => ({
          value: store.id,
          label: `${store.name}, ${formatTemperature(store.targetTemperatureC)}`,
        }))}
        defaultValue={placement?.storeId}
      />
      <SelectField
        name="container"
        label="Container"
        empty="Choose …"
        options={CONTAINER_OPTIONS}
        defaultValue={placement?.container}
      />
      <div className="grid content-start gap-2">
        <NumberField
          name="moisturePercent"
          label="Moisture"
          hint="Percent of fresh weight; sealed seed needs it."
          unit="%"
          optional
          defaultValue={placement?.moisturePercent}
        />
        <StoreAnywayField />
      </div>
    </>
  );
}
