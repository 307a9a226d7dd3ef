import { formatTemperature } from '@/app/_format/figures';
import { CONTAINERS } from '@/lib/domain/stock/containers';
import { AnywayField } from './anyway-field';
import { NumberField, SelectField } from './fields';

interface StoreProps {
  stores: { id: string; name: string; targetTemperatureC: number }[];
  defaultValue?: string | undefined;
}

/** Into which store: path and temperature, 'Freezer A › Shelf 2, −18 °C'. */
export function StoreField({ stores, defaultValue }: StoreProps) {
  return (
    <div className="grid content-start gap-2">
      <SelectField
        name="storeId"
        label="Store"
        empty="Choose …"
        options={stores.map((store) => ({
          value: store.id,
          label: `${store.name}, ${formatTemperature(store.targetTemperatureC)}`,
        }))}
        defaultValue={defaultValue}
      />
      <AnywayField name="overfill" label="Put it there all the same" />
    </div>
  );
}

const CONTAINER_OPTIONS = CONTAINERS.map(({ key, label, hermetic }) => ({
  value: key,
  label: `${label} (${hermetic ? 'keeps its moisture' : 'lets air in'})`,
}));

export function ContainerField({ defaultValue }: { defaultValue?: string | null | undefined }) {
  return (
    <SelectField
      name="container"
      label="Container"
      empty="Choose …"
      options={CONTAINER_OPTIONS}
      defaultValue={defaultValue}
    />
  );
}

export function MoistureField({ defaultValue }: { defaultValue?: number | null | undefined }) {
  return (
    <div className="grid content-start gap-2">
      <NumberField
        name="moisturePercent"
        label="Moisture"
        hint="Percent of fresh weight; sealed seed needs it."
        unit="%"
        optional
        defaultValue={defaultValue}
      />
      <AnywayField name="storeAnyway" label="Store it anyway" />
    </div>
  );
}
