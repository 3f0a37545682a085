#!/usr/bin/env python3
"""An independent decoder over our captures: Debian's tshark, whose results are kept as goldens.

    apt-get install tshark
    python3 tools/tshark-decode.py

Writes test/bus/goldens/NAME.tshark.json for every test/bus/captures/NAME.log: all whole messages as the ISO 15765
dissector puts them together, and the values that its OBD-II dissector gives of them. Tests read the goldens; they do
not need tshark.
"""
import json
import pathlib
import subprocess

ROOT = pathlib.Path(__file__).resolve().parent.parent
VALUES = {
    0x04: "engine_load", 0x05: "engine_coolant_temp", 0x06: "short_term_fuel_bank1", 0x07: "long_term_fuel_bank1",
    0x0B: "intake_manifold_absolute_pressure", 0x0C: "engine_rpm", 0x0D: "vehicle_speed", 0x0F: "intake_air_temp",
    0x10: "maf_air_flow_rate", 0x11: "throttle_position", 0x1F: "engine_uptime", 0x21: "distance_traveled_with_mil",
    0x2E: "commanded_evap_purge", 0x2F: "fuel_tank_level_input", 0x30: "warm_ups",
    0x31: "distance_traveled_since_code_clear", 0x32: "evap_system_vapor_pressure",
    0x33: "absolute_barometric_pressure", 0x3C: "catalyst_temp_11", 0x42: "control_module_voltage",
    0x44: "fuel_air_commanded_equiv_ratio", 0x46: "ambient_air_temp", 0x4D: "time_run_with_mil",
    0x4E: "time_since_trouble_code_clear", 0x53: "absolute_evap_system_vapor_pressure",
}


def fields(path, sub, names):
    command = ["tshark", "-r", str(path), "-d", "can.subdissector,iso15765", "-d", f"iso15765.subdissector,{sub}", "-T", "fields"]
    for name in names:
        command += ["-e", name]
    text = subprocess.run(command, check=True, capture_output=True, text=True).stdout
    return [line.split("\t") for line in text.splitlines()]


def decode(path):
    messages = []
    for number, can_id, kind, whole, data in fields(
        path, "data", ["frame.number", "can.id", "iso15765.message_type", "iso15765.reassembled.length", "data.data"]
    ):
        if data and (kind == "0x00" or whole):
            messages.append({"frame": int(number), "id": int(can_id), "message": data.split(",")[-1].replace(":", "")})
    values = []
    names = [f"obd-ii.mode01_{name}" for name in VALUES.values()]
    for row in fields(path, "obd-ii", ["frame.number", "can.id", "obd-ii.mode", *names]):
        for item, value in zip(VALUES, row[3:]):
            if value and int(row[1]) >= 0x7E8:
                values.append({"frame": int(row[0]), "item": item, "value": float(value)})
    return {"messages": messages, "values": values}


if __name__ == "__main__":
    version = subprocess.run(["tshark", "--version"], capture_output=True, text=True).stdout.splitlines()[0]
    for path in sorted((ROOT / "test/bus/captures").glob("*.log")):
        golden = ROOT / "test/bus/goldens" / f"{path.stem}.tshark.json"
        golden.write_text(json.dumps({"decoder": version, **decode(path)}, indent=1) + "\n")
        print(f"{golden.relative_to(ROOT)} written")
