import {
  goesOnFrom,
  type SequentialPlan,
  stopsOver,
} from '../../../../lib/domain/germination/sample-size/sequential-plan';

/** Whether the last look always decides: no count lies between its two limits. */
export function alwaysDecides({ looks }: SequentialPlan): boolean {
  const last = looks.at(-1);
  return last !== undefined && stopsOver(last) - goesOnFrom(last) <= 0;
}
