/** A simulated car on a TCP port of this machine, behind an adapter that speaks slcan. */
import { createServer, type Server, type Socket } from 'node:net';
import type { BusFrame } from '../frame-port.ts';
import { encodeSlcan, SlcanDecoder } from '../slcan-codec.ts';
import { BusLine } from './bus-line.ts';
import type { CarState } from './car-state.ts';
import { SimulatedUnit, type UnitSettings } from './simulated-unit.ts';

export interface ServedCar {
  readonly address: string;
  readonly port: number;
  /** Data items that went out to the tester, whole, since the start. */
  readonly framesSent: () => number;
  /** Pulls the adapter out: lines are cut, and none is taken until it is plugged in again. */
  unplug(): void;
  plug(): Promise<void>;
  close(): Promise<void>;
}

export interface ServeOptions {
  readonly port?: number;
  readonly bitRate?: number;
  readonly units?: readonly UnitSettings[];
  /** Where in its recording the car begins, s. */
  readonly startS?: number;
}

/** The engine's unit; 10 ms is a usual answer, 50 ms the most (P2, from memory). */
export const ENGINE_UNIT: UnitSettings = { id: 0x7e8, extended: false, thinksS: 0.01 };

export async function serveCar(car: CarState, options: ServeOptions = {}): Promise<ServedCar> {
  const sockets = new Set<Socket>();
  const bitRate = options.bitRate ?? 500_000;
  let framesSent = 0;
  const open = new Set<Socket>();
  const line = new BusLine(bitRate, (frame) => {
    const text = encodeSlcan(frame);
    for (const socket of open) {
      socket.write(text);
      framesSent++;
    }
  });
  const units = (options.units ?? [ENGINE_UNIT]).map(
    (settings) => new SimulatedUnit(car, settings, line, options.startS ?? 0),
  );
  const transmit = (frame: BusFrame, from: Socket): void => {
    const throughS = line.occupy(frame);
    // Other listeners on the bus hear the tester too.
    for (const socket of open) if (socket !== from) socket.write(encodeSlcan(frame));
    for (const unit of units) unit.take(frame, throughS);
  };
  const attend = (socket: Socket): void => {
    const decoder = new SlcanDecoder();
    let rate: string | undefined;
    socket.setNoDelay(true);
    sockets.add(socket);
    socket.on('data', (bytes) => {
      for (const event of decoder.push(bytes)) {
        if (event.kind === 'frame') {
          const isOpen = open.has(socket);
          socket.write(isOpen ? (event.frame.extended ? 'Z\r' : 'z\r') : '\x07');
          if (isOpen) transmit(event.frame, socket);
        } else if (event.kind === 'line') socket.write(command(event.text));
        else socket.write('\x07');
      }
    });
    const command = (text: string): string => {
      switch (text[0]) {
        case undefined:
          return '\r';
        case 'S':
          if (open.has(socket) || !/^S[0-8]$/.test(text)) return '\x07';
          rate = text;
          return '\r';
        case 'O':
          if (rate === undefined) return '\x07';
          open.add(socket);
          return '\r';
        case 'C':
          open.delete(socket);
          return '\r';
        case 'V':
          return 'V0101\r';
        case 'N':
          return 'N0001\r';
        case 'F':
          return 'F00\r';
        case 'Z':
        case 'M':
        case 'm':
          return '\r';
        default:
          return '\x07';
      }
    };
    const gone = (): void => {
      sockets.delete(socket);
      open.delete(socket);
    };
    socket.on('close', gone);
    socket.on('error', gone);
  };
  let server: Server;
  const listen = (port: number): Promise<number> =>
    new Promise((resolve, reject) => {
      server = createServer(attend);
      server.once('error', reject);
      server.listen(port, '127.0.0.1', () => {
        const address = server.address();
        resolve(typeof address === 'object' && address !== null ? address.port : port);
      });
    });
  const cut = (): void => {
    line.clear();
    open.clear();
    for (const socket of sockets) socket.destroy();
    sockets.clear();
    server.close();
  };
  const port = await listen(options.port ?? 0);
  return {
    address: `tcp://127.0.0.1:${port}`,
    port,
    framesSent: () => framesSent,
    unplug: cut,
    plug: async () => void (await listen(port)),
    close: async () => {
      cut();
    },
  };
}
