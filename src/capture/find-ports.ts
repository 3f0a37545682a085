/** Where an adapter may be found on this machine. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

export interface FoundPort {
  /** As `openPort` takes it. */
  readonly address: string;
  readonly kind: 'serial' | 'socketcan';
  /** What the device says of itself; absent where it says nothing. */
  readonly words?: string;
}

/** ARPHRD_CAN of linux/if_arp.h. */
const CAN_TYPE = '280';
const NETWORKS = '/sys/class/net';

async function canNetworks(folder: string): Promise<FoundPort[]> {
  const names = await readdir(folder).catch(() => []);
  const found: FoundPort[] = [];
  for (const name of names.sort()) {
    const type = await readFile(join(folder, name, 'type'), 'utf8').catch(() => '');
    if (type.trim() === CAN_TYPE && isCanNetwork(name)) found.push({ address: name, kind: 'socketcan' });
  }
  return found;
}

/** Serial devices that a person could mean: those that come by USB and name a maker or product. */
async function serialPorts(): Promise<{ readonly ports: FoundPort[]; readonly isInstalled: boolean }> {
  const library = await import('serialport').catch(() => undefined);
  if (library === undefined) return { ports: [], isInstalled: false };
  const all = await library.SerialPort.list().catch(() => []);
  const ports = all
    .filter(({ vendorId, manufacturer }) => vendorId !== undefined || manufacturer !== undefined)
    .map(({ path, manufacturer, serialNumber }) => {
      const words = [manufacturer, serialNumber].filter((word) => word !== undefined && word !== '').join(', ');
      return { address: path, kind: 'serial' as const, ...(words === '' ? {} : { words }) };
    });
  return { ports, isInstalled: true };
}

export async function findPorts(
  networksFolder = NETWORKS,
): Promise<{ readonly ports: readonly FoundPort[]; readonly hasSerialLibrary: boolean }> {
  const [serial, networks] = await Promise.all([serialPorts(), canNetworks(networksFolder)]);
  return { ports: [...serial.ports, ...networks], hasSerialLibrary: serial.isInstalled };
}

export const isCanNetwork = (address: string): boolean => /^(v?s?l?can\d+)$/.test(address);

/** True for addresses that can lead to nothing but an adapter: serial devices, CAN networks, a port of this machine. */
export function isAdapterAddress(address: string): boolean {
  const tcp = /^tcp:\/\/(\[::1\]|127(?:\.\d{1,3}){3}|localhost):(\d{1,5})$/.exec(address);
  if (tcp !== null) return Number(tcp[2]) > 0 && Number(tcp[2]) < 65_536;
  return (
    isCanNetwork(address) ||
    /^COM\d{1,3}$/.test(address) ||
    /^\/dev\/(tty[A-Za-z]{1,8}\d{0,3}|cu\.[\w.-]{1,60}|pts\/\d{1,5}|serial\/by-(id|path)\/[\w.:+-]{1,200})$/.test(
      address,
    )
  );
}
