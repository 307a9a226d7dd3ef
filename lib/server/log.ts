import pino from 'pino';

/** One log to standard output; nothing that opens a door is ever written to it. */
export const log = pino({
  base: null,
  level: process.env.LOG_LEVEL || 'info',
  redact: ['*.password', '*.token', '*.cookie', '*.authorization'],
  serializers: { error: pino.stdSerializers.err },
});
