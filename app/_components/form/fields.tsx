'use client';

import clsx from 'clsx';
import { type ReactNode, useId } from 'react';
import { useFormState } from './form';

interface BaseProps {
  name: string;
  label: string;
  /** One quiet line under the label: unit, example, why it is asked. */
  hint?: ReactNode;
  defaultValue?: string | number | null;
  /** Marks what may be left empty; everything else is needed. */
  optional?: boolean;
  className?: string;
}

function useField({ name, defaultValue, hint }: BaseProps) {
  const { state } = useFormState();
  const id = useId();
  const error = state.fieldErrors[name];
  const value = state.values[name] ?? (defaultValue == null ? '' : String(defaultValue));
  return {
    id,
    error,
    value,
    // A new key after each answer makes React take the typed values as the new defaults.
    key: `${name}-${state.attempt}`,
    control: {
      id,
      name,
      'aria-invalid': error ? (true as const) : undefined,
      'aria-describedby': hint ? `${id}-hint ${id}-error` : `${id}-error`,
    },
  };
}

function Wrapper({
  field,
  props,
  children,
}: {
  field: ReturnType<typeof useField>;
  props: BaseProps;
  children: ReactNode;
}) {
  return (
    <div className={clsx('grid content-start gap-1', props.className)}>
      <label htmlFor={field.id} className="font-semibold">
        {props.label}
        {props.optional && <span className="quiet font-normal"> (optional)</span>}
      </label>
      {props.hint && (
        <p id={`${field.id}-hint`} className="label">
          {props.hint}
        </p>
      )}
      {children}
      <p id={`${field.id}-error`} className="text-sm font-semibold text-madder empty:hidden">
        {field.error}
      </p>
    </div>
  );
}

interface TextProps extends BaseProps {
  type?: 'text' | 'date' | 'datetime-local' | 'password' | 'search';
  inputMode?: 'text' | 'numeric' | 'decimal';
  autoComplete?: string;
  unit?: string;
  list?: string;
  placeholder?: string;
  max?: string;
}

export function TextField(props: TextProps) {
  const field = useField(props);
  const input = (
    <input
      key={field.key}
      {...field.control}
      type={props.type ?? 'text'}
      inputMode={props.inputMode}
      autoComplete={props.autoComplete ?? 'off'}
      list={props.list}
      placeholder={props.placeholder}
      max={props.max}
      defaultValue={field.value}
      className={clsx('field', (props.inputMode || props.type?.startsWith('date')) && 'figures')}
    />
  );
  return (
    <Wrapper field={field} props={props}>
      {props.unit ? (
        <div className="flex items-center gap-2">
          {input}
          <span className="quiet shrink-0">{props.unit}</span>
        </div>
      ) : (
        input
      )}
    </Wrapper>
  );
}

/** A number typed on a phone's keypad; a decimal comma is as good as a point. */
export function NumberField(props: Omit<TextProps, 'type'> & { whole?: boolean }) {
  return <TextField {...props} inputMode={props.whole ? 'numeric' : 'decimal'} />;
}

export function DateField(props: Omit<TextProps, 'type' | 'inputMode'>) {
  return <TextField {...props} type="date" />;
}

export function TextAreaField(props: BaseProps & { rows?: number }) {
  const field = useField(props);
  return (
    <Wrapper field={field} props={props}>
      <textarea
        key={field.key}
        {...field.control}
        rows={props.rows ?? 3}
        defaultValue={field.value}
        className="field"
      />
    </Wrapper>
  );
}

export interface Option {
  value: string;
  label: string;
}

export function SelectField(props: BaseProps & { options: Option[]; empty?: string }) {
  const field = useField(props);
  return (
    <Wrapper field={field} props={props}>
      <select key={field.key} {...field.control} defaultValue={field.value} className="field">
        {props.empty !== undefined && <option value="">{props.empty}</option>}
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Wrapper>
  );
}

export function CheckField(props: BaseProps & { checkedByDefault?: boolean }) {
  const field = useField(props);
  const { state } = useFormState();
  const checked = state.attempt > 0 ? state.values[props.name] === 'on' : props.checkedByDefault;
  return (
    <div className={clsx('grid gap-1', props.className)}>
      <label htmlFor={field.id} className="flex min-h-11 items-center gap-3">
        <input
          key={field.key}
          {...field.control}
          type="checkbox"
          defaultChecked={checked}
          className="size-6 shrink-0 accent-leaf"
        />
        <span>
          <span className="font-semibold">{props.label}</span>
          {props.hint && (
            <span id={`${field.id}-hint`} className="label block">
              {props.hint}
            </span>
          )}
        </span>
      </label>
      <p id={`${field.id}-error`} className="text-sm font-semibold text-madder empty:hidden">
        {field.error}
      </p>
    </div>
  );
}

export function HiddenField({ name, value }: { name: string; value: string | number }) {
  return <input type="hidden" name={name} value={value} />;
}
