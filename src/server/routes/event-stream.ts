/** Server-sent events: a line that stays open until either side ends it. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Doorkeeper } from '../access/doorkeeper.ts';
import { SAFE_HEADERS } from '../guards/safe-headers.ts';
import type { App } from '../parts.ts';

/** Lines that say nothing keep the connection open, and find out who has gone. */
const HEARTBEAT_MS = 20_000;

export interface EventStream {
  send(event: string, data: unknown, id?: number): void;
  end(): void;
}

export interface EventStreams {
  /** `listen` is called once the head is out; what it returns is called when the line has ended. */
  open(request: FastifyRequest, reply: FastifyReply, listen: (stream: EventStream) => () => unknown): void;
}

export function eventStreams(app: App, doorkeeper: Doorkeeper): EventStreams {
  const open = new Set<() => void>();
  app.addHook('preClose', async () => {
    for (const end of open) end();
  });
  return {
    open(request, reply, listen) {
      reply.hijack();
      const { raw } = reply;
      // Gone while the answer was made ready: nothing would ever end what is begun below.
      if (raw.destroyed) return;
      raw.writeHead(200, {
        ...SAFE_HEADERS,
        'content-type': 'text/event-stream; charset=utf-8',
        'cache-control': 'no-store',
        connection: 'keep-alive',
        'x-accel-buffering': 'no',
      });
      const end = () => raw.end();
      const stopListening = listen({
        send: (event, data, id) => {
          if (raw.writableEnded) return;
          raw.write(`${id === undefined ? '' : `id: ${id}\n`}event: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
        },
        end,
      });
      const heartbeat = setInterval(async () => {
        const { role } = await doorkeeper.whoIs(request).catch(() => request.who);
        if (role === null) raw.end();
        else raw.write(': still here\n\n');
      }, HEARTBEAT_MS);
      open.add(end);
      raw.on('close', () => {
        open.delete(end);
        clearInterval(heartbeat);
        stopListening();
      });
    },
  };
}
