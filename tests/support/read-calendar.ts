/** A strict reader of iCalendar text, written from RFC 5545 and not from the library that writes ours. */

export interface Property {
  name: string;
  parameters: Record<string, string>;
  /** as it stands, escapes included */
  raw: string;
  /** as TEXT: unescaped (section 3.3.11) */
  text: string;
}

export interface Component {
  name: string;
  properties: Property[];
  components: Component[];
}

const MOST_OCTETS = 75;
const LINE = /^([A-Z0-9-]+)((?:;[A-Z0-9-]+=(?:"[^"\p{Cc}]*"|[^";:,\p{Cc}]*))*):([^\p{Cc}]*)$/u;

/** @throws Error naming the line that breaks a rule */
export function readCalendar(text: string): Component {
  const top: Component = { name: 'STREAM', properties: [], components: [] };
  const open = [top];
  for (const line of unfold(text)) {
    const property = readLine(line);
    const here = open.at(-1) as Component;
    if (property.name === 'BEGIN') {
      const component = { name: property.raw, properties: [], components: [] };
      here.components.push(component);
      open.push(component);
    } else if (property.name === 'END') {
      if (here.name !== property.raw) throw new Error(`END:${property.raw} closes ${here.name}`);
      open.pop();
    } else {
      here.properties.push(property);
    }
  }
  const [calendar, another] = top.components;
  if (open.length !== 1 || !calendar || another || top.properties.length > 0) throw new Error('not one whole calendar');
  return calendar;
}

/** Section 3.1: lines end in CRLF and hold at most 75 octets; CRLF and a blank continue a line. */
function unfold(text: string): string[] {
  if (!text.endsWith('\r\n')) throw new Error('the last line has no line break');
  const lines: string[] = [];
  for (const line of text.slice(0, -2).split('\r\n')) {
    if (/[\r\n]/.test(line)) throw new Error(`a lone CR or LF in ${JSON.stringify(line)}`);
    if (new TextEncoder().encode(line).length > MOST_OCTETS) throw new Error(`longer than 75 octets: ${line}`);
    if (/\p{Cs}/u.test(line)) throw new Error(`a letter was cut in two: ${line}`);
    if (/^[ \t]/.test(line)) lines.push(`${lines.pop()}${line.slice(1)}`);
    else lines.push(line);
  }
  return lines;
}

function readLine(line: string): Property {
  const found = LINE.exec(line);
  if (!found) throw new Error(`not a content line: ${JSON.stringify(line)}`);
  const [, name = '', parameters = '', raw = ''] = found;
  return {
    name,
    parameters: Object.fromEntries(
      [...parameters.matchAll(/;([A-Z0-9-]+)=([^;]*)/g)].map(([, key, value]) => [key, value]),
    ),
    raw,
    text: raw.replace(/\\([\\;,nN])/g, (_, sign: string) => (/n/i.test(sign) ? '\n' : sign)),
  };
}

/** The only property of that name. @throws Error when there is none, or several */
export function only({ name: of, properties }: Component, name: string): Property {
  const found = properties.filter((property) => property.name === name);
  if (found.length !== 1 || !found[0]) throw new Error(`${of} has ${found.length} of ${name}`);
  return found[0];
}

/** A DATE value, section 3.3.4, as 'YYYY-MM-DD'. @throws Error when it is an instant or says a zone */
export function dateOf(component: Component, name: string): string {
  const { parameters, raw } = only(component, name);
  const found = /^(\d{4})(\d{2})(\d{2})$/.exec(raw);
  if (parameters.VALUE !== 'DATE' || parameters.TZID || !found) throw new Error(`${name} is no date: ${raw}`);
  return `${found[1]}-${found[2]}-${found[3]}`;
}
