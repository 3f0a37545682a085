#!/usr/bin/env python3
"""An independent client of the simulated car: Debian's python3-can over the slcan protocol.

    python3 tools/python-can-client.py PORT OUT

Asks as a tester would, with flow control of its own, and writes all frames that it sent and received as a capture. Started
by tools/python-can-check.ts, which serves the car.
"""
import sys
import time

import can

REQUESTS = [
    [0x01, 0x00], [0x01, 0x01], [0x01, 0x32], [0x01, 0x32, 0x2E, 0x0B, 0x0C, 0x06, 0x0D], [0x01, 0x2F, 0x33],
    [0x01, 0x30], [0x01, 0x31], [0x03], [0x07], [0x0A], [0x09, 0x02], [0x09, 0x08], [0x06, 0x3C], [0x06, 0x3D], [0x01, 0xA6],
]


def main(port, out):
    bus = can.Bus(interface="slcan", channel=f"socket://127.0.0.1:{port}", bitrate=500000)
    log = can.CanutilsLogWriter(out)

    def send(arbitration_id, data):
        message = can.Message(arbitration_id=arbitration_id, data=bytes(data).ljust(8, b"\0"), is_extended_id=False, timestamp=time.time(), is_rx=False)
        bus.send(message)
        log(message)

    for request in REQUESTS:
        send(0x7E0, [len(request), *request])
        left = None
        deadline = time.time() + 1
        while time.time() < deadline:
            message = bus.recv(timeout=0.2)
            if message is None or message.arbitration_id != 0x7E8:
                continue
            message.timestamp = time.time()
            log(message)
            kind = message.data[0] >> 4
            if kind == 0:
                break
            if kind == 1:
                left = ((message.data[0] & 15) << 8 | message.data[1]) - 6
                send(0x7E0, [0x30, 0, 0])
            if kind == 2:
                left -= 7
                if left <= 0:
                    break
        else:
            sys.exit(f"no answer to {request}")
    log.stop()
    bus.shutdown()


if __name__ == "__main__":
    main(int(sys.argv[1]), sys.argv[2])
