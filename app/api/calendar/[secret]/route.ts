import { countsCalendar } from '@/lib/server/calendar/counts-calendar';
import { findOpenFeed, noteFeedRead } from '@/lib/server/calendar/open-feed';
import { getBank } from '@/lib/server/queries/bank';
import { findTraysUnderWay } from '@/lib/server/queries/trays-under-way';
import { today } from '@/lib/server/today';

interface Props {
  params: Promise<{ secret: string }>;
}

/** The secret, and what some calendar programs want an address to end with. */
const ADDRESS = /^([\w-]{20,200})(?:\.ics)?$/;

/** When trays are counted, for calendar programs. They cannot sign in: the secret in the address decides. */
export async function GET(_request: Request, { params }: Props): Promise<Response> {
  const secret = ADDRESS.exec((await params).secret)?.[1];
  const feed = secret ? await findOpenFeed(secret) : null;
  if (!feed) {
    return new Response('There is no calendar at this address. It may have been revoked: make another.', {
      status: 404,
      headers: { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' },
    });
  }
  const now = new Date();
  const bank = await getBank();
  const calendar = countsCalendar({
    trays: findTraysUnderWay(),
    bankName: bank.name,
    bankAddress: bank.address,
    today: today(),
    now,
  });
  await noteFeedRead(feed, now);
  return new Response(calendar, {
    headers: {
      'Content-Type': 'text/calendar; charset=utf-8; method=PUBLISH',
      'Content-Disposition': 'inline; filename="counts.ics"',
      'Cache-Control': 'private, no-cache',
      'X-Robots-Tag': 'noindex',
    },
  });
}
