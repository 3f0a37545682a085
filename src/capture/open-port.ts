/** Opens the line to a car by its address: `tcp://host:port`, a serial device, or the name of a CAN network. */
import { connect } from 'node:net';
import { isCanNetwork } from './find-ports.ts';
import type { BytePort, FramePort } from './frame-port.ts';
import { SlcanPort } from './slcan-port.ts';
import { SocketCanPort } from './socketcan-port.ts';

export interface PortOptions {
  /** Of the bus, bit/s. */
  readonly bitRate: number;
  /** Of the serial line, for adapters that are no USB device of their own. */
  readonly baudRate: number;
}

/** Common practice, no source: passenger cars; some have 250 kbit/s. */
export const USUAL_PORT: PortOptions = { bitRate: 500_000, baudRate: 115_200 };
const CONNECT_TIME_OUT_MS = 3000;

export async function openPort(address: string, options: PortOptions = USUAL_PORT): Promise<FramePort> {
  const tcp = /^tcp:\/\/\[?([^\]]+?)\]?:(\d+)\/?$/.exec(address);
  if (tcp !== null) return new SlcanPort(await openTcp(tcp[1]!, Number(tcp[2])), address, options.bitRate);
  if (isCanNetwork(address)) return new SocketCanPort(address);
  return new SlcanPort(await openSerial(address, options.baudRate), address, options.bitRate);
}

function openTcp(host: string, port: number): Promise<BytePort> {
  return new Promise((resolve, reject) => {
    const socket = connect({ host, port, noDelay: true });
    socket.setTimeout(CONNECT_TIME_OUT_MS, () => socket.destroy(new Error('no answer')));
    let reason = 'the line was closed';
    const line: BytePort = {
      write: (bytes) => void (socket.writable && socket.write(bytes)),
      close: () => void socket.end(),
      onBytes: () => {},
      onClosed: () => {},
    };
    socket.once('connect', () => {
      socket.setTimeout(0);
      socket.on('data', (bytes) => line.onBytes(bytes));
      socket.once('close', () => line.onClosed(reason));
      resolve(line);
    });
    socket.on('error', (error) => {
      reason = error.message;
      reject(error);
    });
  });
}

async function openSerial(path: string, baudRate: number): Promise<BytePort> {
  const { SerialPort } = await import('serialport').catch(() => {
    throw new Error(
      'the serial library is not installed on this machine: install the optional package "serialport", or use tcp://host:port',
    );
  });
  return await new Promise((resolve, reject) => {
    const serial = new SerialPort({ path, baudRate, autoOpen: false });
    const line: BytePort = {
      write: (bytes) => void (serial.isOpen && serial.write(Buffer.from(bytes))),
      close: () => void (serial.isOpen && serial.close()),
      onBytes: () => {},
      onClosed: () => {},
    };
    serial.on('data', (bytes: Buffer) => line.onBytes(bytes));
    serial.on('close', () => line.onClosed('the adapter is gone'));
    serial.on('error', (error: Error) => {
      if (serial.isOpen) serial.close();
      reject(error);
    });
    serial.open((error) => (error ? reject(error) : resolve(line)));
  });
}
