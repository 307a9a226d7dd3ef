import { SelectField } from '@/app/_components/form/fields';
import { ROLE_MEANS, ROLES } from '@/lib/domain/people/roles';

/** What somebody may do; what each role means stands above it. */
export function RoleField({ chosen, className }: { chosen: string; className?: string }) {
  return (
    <SelectField
      name="role"
      label="Role"
      hint={`${ROLES.map((role) => `A ${role} ${ROLE_MEANS[role]}`).join('. ')}.`}
      options={ROLES.map((role) => ({ value: role, label: role }))}
      defaultValue={chosen}
      className={className}
    />
  );
}
