import { ContainerField, MoistureField, StoreField } from '@/app/_components/form/placing-fields';

/** Where new seed is put, in what, and how moist it is. */
export function PlacementFields({ stores }: { stores: { id: string; name: string; targetTemperatureC: number }[] }) {
  return (
    <>
      <StoreField stores={stores} />
      <ContainerField />
      <MoistureField />
    </>
  );
}
