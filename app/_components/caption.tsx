/** A sentence in which what stands between ** is set in bold. */
export function Caption({ text }: { text: string }) {
  return (
    <p className="say">{text.split('**').map((part, index) => (index % 2 === 1 ? <b key={part}>{part}</b> : part))}</p>
  );
}
