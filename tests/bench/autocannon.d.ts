/** The little of autocannon that is used here; it comes without types. */
declare module 'autocannon' {
  interface Result {
    non2xx: number;
    errors: number;
    /** seconds */
    duration: number;
  }
  interface Instance extends Promise<Result> {
    on(
      event: 'response',
      listener: (client: unknown, statusCode: number, bytes: number, milliseconds: number) => void,
    ): this;
  }
  export default function autocannon(options: { url: string; amount: number; connections: number }): Instance;
}
