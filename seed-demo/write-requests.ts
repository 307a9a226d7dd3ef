/** Requests for seed: one that was sent, one that waits on the bench. */
import { addDays } from '../lib/domain/calendar/calendar-date';
import { addRequestLine } from '../lib/server/commands/add-request-line';
import { createRequest } from '../lib/server/commands/create-request';
import { sendRequest } from '../lib/server/commands/send-request';
import { updateAccession } from '../lib/server/commands/update-accession';
import { connections } from '../lib/server/database/connections';
import { loadRequestLines } from '../lib/server/queries/request-lines';
import { DEMO_PERSON } from './demo-person';
import { REQUEST_STORIES, type RequestStory, SHARING_STORIES } from './scenarios/requests';

/**
 * @param today  calendar date
 * @throws AppError when a command refuses, which would be a mistake of the scenario
 */
export async function writeRequests(today: string): Promise<void> {
  for (const story of SHARING_STORIES) await writeSharing(story);
  for (const story of REQUEST_STORIES) await writeRequest(story, today);
}

async function writeSharing({ accession, sharing, terms }: (typeof SHARING_STORIES)[number]): Promise<void> {
  const stored = await connections().reader.accession.findFirstOrThrow({
    where: { name: accession },
    select: {
      id: true,
      version: true,
      name: true,
      cropId: true,
      donor: true,
      acquiredOn: true,
      origin: true,
      notes: true,
    },
  });
  await updateAccession(DEMO_PERSON, { ...stored, sharing, sharingTerms: terms });
}

async function writeRequest(story: RequestStory, today: string): Promise<void> {
  const { recipient, recipientKind, contact, purpose, askedDaysAgo, sentDaysAgo, lines } = story;
  const { reader } = connections();
  const askedOn = addDays(today, -askedDaysAgo);
  const { id } = await createRequest(DEMO_PERSON, { recipient, recipientKind, contact, purpose, askedOn });
  for (const { accession, lot, seeds, note } of lines) {
    const lots = await reader.lot.findMany({
      where: { accession: { name: accession } },
      orderBy: { harvestedOn: 'asc' },
      select: { number: true },
    });
    await addRequestLine(DEMO_PERSON, { requestId: id, lot: lots[lot]?.number, seeds, note });
  }
  if (sentDaysAgo === undefined) return;
  const { version } = await reader.sharingRequest.findUniqueOrThrow({ where: { id }, select: { version: true } });
  const terms = Object.fromEntries((await loadRequestLines(reader, id)).map((line) => [line.id, true]));
  const on = addDays(today, -sentDaysAgo);
  await sendRequest(DEMO_PERSON, { requestId: id, version, measured: 'weighed', on, terms });
}
