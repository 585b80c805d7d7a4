# A node with three probes in a few lines of Python: MicroPython on an ESP32 (umqtt.simple), or any computer for a try:
#   python3 three_probes.py --print
# Firebox and wall behind MAX31855 chips, outlet on a DS18B20. What could not be sent is kept and sent later, oldest first.
import json
import sys
import time

SITE, NODE, BROKER, EVERY = "yard", "n1", "192.168.4.1", 5
TOPIC = "firing/1/%s/%s/" % (SITE, NODE)
KEPT_AT_MOST = 600


def max31855(frame):
    """32 bits of the chip to (hot end, cold junction) in degrees C, or a word of fault."""
    if frame == 0 or frame & 0x00020008:
        return "fault:bus"
    for bit, word in ((1, "fault:open"), (2, "fault:short-gnd"), (4, "fault:short-vcc")):
        if frame & bit:
            return word
    hot, cold = frame >> 18, (frame >> 4) & 0xFFF
    return ((hot - 0x4000 if hot & 0x2000 else hot) / 4, (cold - 0x1000 if cold & 0x800 else cold) / 16)


def records(channel, reading):
    if isinstance(reading, str):
        return [{"n": channel, "vs": reading, "t": 0}]
    if isinstance(reading, tuple):
        return [{"n": channel, "v": reading[0], "t": 0}, {"n": channel + "/cj", "v": reading[1], "t": 0}]
    return [{"n": channel, "v": reading, "t": 0}]


def pack(readings, boot, seq, up):
    """One SenML pack: who measures what, then who says it."""
    rows = [row for channel, reading in readings for row in records(channel, reading)]
    rows[0].update({"bn": "%s/%s/" % (SITE, NODE), "bu": "Cel", "ut": EVERY})
    rows += [{"n": "boot", "u": "count", "v": boot}, {"n": "seq", "u": "count", "v": seq}, {"n": "up", "u": "s", "v": up}]
    return json.dumps(rows)


def birth(boot):
    k = {"u": "Cel", "sensor": "K", "converter": "max31855", "linearised": False, "period": EVERY, "lsb": 0.25}
    return json.dumps({
        "fw": "1.0.0", "hw": "esp32", "boot": boot, "clock": "none", "buffer": KEPT_AT_MOST,
        "channels": [
            dict(k, n="firebox", cj="firebox/cj"),
            dict(k, n="wall", cj="wall/cj"),
            {"n": "outlet", "u": "Cel", "sensor": "ds18b20", "linearised": True, "period": EVERY, "lsb": 0.0625},
        ]})


class Node:
    def __init__(self, boot, publish):
        self.boot, self.publish, self.seq, self.kept = boot, publish, 0, []

    def hello(self):
        self.publish(TOPIC + "info", birth(self.boot), True)
        self.publish(TOPIC + "state", json.dumps({"s": "ready", "boot": self.boot}), True)

    def measure(self, readings, up):
        self.seq += 1
        text = pack(readings, self.boot, self.seq, up)
        try:
            while self.kept:
                self.publish(TOPIC + "backlog", self.kept[0], False)
                self.kept.pop(0)  # only once the broker has it
            self.publish(TOPIC + "readings", text, False)
        except OSError:
            self.kept = self.kept[1 - KEPT_AT_MOST:] + [text]
            raise


def on_a_computer():
    """Prints what would be said, with the link away for the second and third turn."""
    turn = [0]

    def publish(topic, text, _retain):
        if turn[0] in (2, 3):
            raise OSError("no link")
        print(topic, text)

    node = Node(1, publish)
    node.hello()
    for turn[0] in range(1, 5):
        try:
            node.measure([("firebox", max31855(0x25C42D00)), ("wall", max31855(0x00011901)), ("outlet", 31.25)], turn[0] * EVERY)
        except OSError:
            pass


def on_a_board():
    import ds18x20, esp32, machine, onewire  # noqa: E401
    from umqtt.simple import MQTTClient

    flash = esp32.NVS("kiln")
    try:
        boot = flash.get_i32("boot") + 1
    except OSError:
        boot = 1
    flash.set_i32("boot", boot)
    flash.commit()
    bus = machine.SPI(1, baudrate=1000000)
    pins = [machine.Pin(number, machine.Pin.OUT, value=1) for number in (5, 17)]
    wire = ds18x20.DS18X20(onewire.OneWire(machine.Pin(4)))
    start, link = time.ticks_ms(), None
    up = 0.0

    def frame(pin):
        pin(0)
        four = bus.read(4)
        pin(1)
        return int.from_bytes(four, "big")

    def outlet():
        try:
            celsius = wire.read_temp(wire.scan()[0])
            wire.convert_temp()
            return "fault:not-converted" if celsius == 85 else celsius
        except IndexError:
            return "fault:bus"
        except Exception:
            return "fault:crc"

    def publish(topic, text, retain):
        if link is None:
            raise OSError("no link")
        link.publish(topic, text, retain, 1)

    node = Node(boot, publish)
    while True:
        now = time.ticks_ms()
        up += time.ticks_diff(now, start) / 1000
        start = now
        try:
            if link is None:
                link = MQTTClient("%s-%s" % (SITE, NODE), BROKER, keepalive=15)
                link.set_last_will(TOPIC + "state", json.dumps({"s": "lost", "boot": boot}), True, 1)
                link.connect()
                node.hello()
        except OSError:
            link = None
        try:
            node.measure([("firebox", max31855(frame(pins[0]))), ("wall", max31855(frame(pins[1]))), ("outlet", outlet())], round(up, 3))
        except OSError:
            link = None
        time.sleep(EVERY)


if __name__ == "__main__":
    on_a_computer() if "--print" in sys.argv else on_a_board()
