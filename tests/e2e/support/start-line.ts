import { once } from 'node:events';
import { connect, createServer, type Socket } from 'node:net';

/** A line to a server, for browsers that are to go through it. */
export interface Line {
  /** 'http://127.0.0.1:43211' */
  address: string;
  /**
   * 'open': everything gets through. 'silent': who asks is connected, and nothing is answered, as at the edge of a signal.
   * 'breaks off': answers begin, and stop in the middle.
   */
  be(how: Quality): void;
  close(): Promise<void>;
}
type Quality = 'open' | 'silent' | 'breaks off';

/** So much of an answer gets through before it breaks off: its head, and the beginning of a page. */
const BEGINNING_BYTES = 6_000;

/** What a browser's offline switch cannot do: requests that neither succeed nor fail. */
export async function startLine(serverPort: number): Promise<Line> {
  let quality: Quality = 'open';
  const sockets = new Set<Socket>();
  const entrance = createServer((browser) => {
    sockets.add(browser);
    browser.on('error', () => browser.destroy());
    browser.on('close', () => sockets.delete(browser));
    // A dead line stays dead when the signal comes back; what is asked anew gets a new one.
    if (quality === 'silent') return;
    const server = connect(serverPort, '127.0.0.1');
    server.on('error', () => browser.destroy());
    server.on('close', () => browser.end());
    browser.on('close', () => server.destroy());
    browser.on('data', (asked) => quality !== 'silent' && server.write(asked));
    let beginning = BEGINNING_BYTES;
    server.on('data', (answer) => {
      if (quality === 'open') browser.write(answer);
      if (quality !== 'breaks off' || beginning <= 0) return;
      browser.write(answer.subarray(0, beginning));
      beginning -= answer.length;
    });
  });
  entrance.listen(0, '127.0.0.1');
  await once(entrance, 'listening');
  const address = entrance.address();
  if (address === null || typeof address === 'string') throw new Error('startLine: no port was given');
  return {
    address: `http://127.0.0.1:${address.port}`,
    be(how) {
      quality = how;
    },
    async close() {
      for (const socket of sockets) socket.destroy();
      entrance.close();
      await once(entrance, 'close');
    },
  };
}
