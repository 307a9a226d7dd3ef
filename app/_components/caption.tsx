/** A sentence in which what stands between ** is set in bold. */
export function Caption({ text }: { text: string }) {
  return (
    <p className="say">
      <Emphasis text={text} />
    </p>
  );
}

/** The same without a paragraph of its own. */
export function Emphasis({ text }: { text: string }) {
  return text.split('**').map((part, index) => (index % 2 === 1 ? <b key={part}>{part}</b> : part));
}
