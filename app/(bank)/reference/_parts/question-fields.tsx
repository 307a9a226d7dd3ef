import clsx from 'clsx';
import type { ReactNode } from 'react';
import type { Question } from './read-question';

interface BaseProps {
  question: Question<unknown>;
  name: string;
  label: string;
  hint?: ReactNode;
  optional?: boolean;
  className?: string;
}

/** The label above a field, and below it what is wrong with what was typed. */
function Asked({
  props,
  children,
}: {
  props: BaseProps;
  children: (control: {
    id: string;
    name: string;
    'aria-invalid': true | undefined;
    'aria-describedby': string;
  }) => ReactNode;
}) {
  const { question, name, label, hint, optional } = props;
  const error = question.errors[name];
  return (
    <div className={clsx('grid content-start gap-1', props.className)}>
      <label htmlFor={`ask-${name}`} className="font-semibold">
        {label}
        {optional && <span className="quiet font-normal"> (optional)</span>}
      </label>
      {hint && (
        <p id={`ask-${name}-hint`} className="label">
          {hint}
        </p>
      )}
      {children({
        id: `ask-${name}`,
        name,
        'aria-invalid': error ? true : undefined,
        'aria-describedby': hint ? `ask-${name}-hint ask-${name}-error` : `ask-${name}-error`,
      })}
      <p id={`ask-${name}-error`} className="text-sm font-semibold text-madder empty:hidden">
        {error}
      </p>
    </div>
  );
}

/** A number, with decimal point or comma. */
export function AskNumber(props: BaseProps & { unit?: string; whole?: boolean }) {
  return (
    <Asked props={props}>
      {(control) => (
        <div className="flex items-center gap-2">
          <input
            {...control}
            inputMode={props.whole ? 'numeric' : 'decimal'}
            autoComplete="off"
            defaultValue={props.question.typed[props.name] ?? ''}
            className="field figures"
          />
          {props.unit && <span className="quiet shrink-0">{props.unit}</span>}
        </div>
      )}
    </Asked>
  );
}

/** Short text: a row of counts. */
export function AskText(props: BaseProps & { placeholder?: string }) {
  return (
    <Asked props={props}>
      {(control) => (
        <input
          {...control}
          autoComplete="off"
          placeholder={props.placeholder}
          defaultValue={props.question.typed[props.name] ?? ''}
          className="field figures"
        />
      )}
    </Asked>
  );
}

/** Several lines, such as pasted counts. */
export function AskLines(props: BaseProps & { rows?: number }) {
  return (
    <Asked props={{ className: 'col-span-full max-w-2xl', ...props }}>
      {(control) => (
        <textarea
          {...control}
          rows={props.rows ?? 8}
          spellCheck={false}
          defaultValue={props.question.typed[props.name] ?? ''}
          className="field figures"
        />
      )}
    </Asked>
  );
}

export function AskChoice(props: BaseProps & { options: readonly { value: string; label: string }[]; empty?: string }) {
  return (
    <Asked props={props}>
      {(control) => (
        <select {...control} defaultValue={props.question.typed[props.name] ?? ''} className="field">
          {props.empty !== undefined && <option value="">{props.empty}</option>}
          {props.options.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      )}
    </Asked>
  );
}
