# A node with three probes in a few lines of Python: MicroPython on an ESP32 (umqtt.simple), or any computer for a try:
#   python3 three_probes.py --print
# Firebox and wall behind MAX31855 chips, outlet on a DS18B20. What could not be sent is kept and sent later, oldest first.
# It obeys `cmd`; with a piezo on a pin (PIEZO) it is a buzzer as well, with a limit of its own (buzzer.py, copied beside it).
import json
import sys
import time

SITE, NODE, BROKER, EVERY = "yard", "n1", "192.168.4.1", 5
TOPIC = "firing/1/%s/%s/" % (SITE, NODE)
KEPT_AT_MOST = 600
PIEZO, LAMP = None, 2  # pins; None where nothing is fitted


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
    def __init__(self, boot, publish, able=("rebirth",)):
        self.boot, self.publish, self.able, self.seq, self.kept = boot, publish, able, 0, []

    def obey(self, text, new_boot):
        """An order of the service: answered first, then done. Gives what is to be done, None where that is not for this node."""
        try:
            order = json.loads(text)
            what, number = order["do"], order["id"]
        except (ValueError, KeyError, TypeError):
            return None
        can = what in self.able
        self.publish(TOPIC + "ack", json.dumps({"id": number, "ok": can}), False)
        if not can:
            return None
        if what == "rebirth":  # what is kept keeps the identity that it was composed with
            self.boot, self.seq = new_boot(), 0
        return what

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
    """Prints what would be said, with the link away for the second and third turn; orders come as lines of the input, after the fourth."""
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
    for line in sys.stdin:
        if node.obey(line, lambda: node.boot + 1) == "rebirth":
            node.hello()
            node.measure([("outlet", 31.25)], 25)


def on_a_board():
    import ds18x20, esp32, machine, onewire  # noqa: E401
    from umqtt.simple import MQTTClient
    from buzzer import Buzzer, tone_on

    flash = esp32.NVS("kiln")

    def stored(name, otherwise):
        try:
            return flash.get_i32(name)
        except OSError:
            return otherwise

    def store(name, value):
        flash.set_i32(name, value)
        flash.commit()

    def new_boot():
        boot = stored("boot", 0) + 1
        store("boot", boot)
        return boot

    bus = machine.SPI(1, baudrate=1000000)
    pins = [machine.Pin(number, machine.Pin.OUT, value=1) for number in (5, 17)]
    wire = ds18x20.DS18X20(onewire.OneWire(machine.Pin(4)))
    lamp = None if LAMP is None else machine.Pin(LAMP, machine.Pin.OUT)
    piezo = None if PIEZO is None else machine.Pin(PIEZO, machine.Pin.OUT)
    start, link, up, next_turn, blink_until = time.ticks_ms(), None, 0.0, 0.0, 0.0
    buzzer = Buzzer(0, stored("firing", 0) == 1)
    said = []

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

    def connect():
        fresh = MQTTClient("%s-%s" % (SITE, NODE), BROKER, keepalive=15)
        fresh.set_last_will(TOPIC + "state", json.dumps({"s": "lost", "boot": node.boot}), True, 1)
        # only noted here: whoever publishes inside this call waits for ever
        fresh.set_callback(lambda topic, text: said.append((topic.decode(), text.decode())))
        fresh.connect()
        fresh.subscribe(TOPIC + "cmd", 1)
        if piezo is not None:
            for name in ("beat", "alert", "state"):
                fresh.subscribe("firing/1/%s/server/%s" % (SITE, name), 1)
        return fresh

    node = Node(new_boot(), publish, ("rebirth",) + (() if lamp is None else ("identify",)) + (() if piezo is None else ("beep",)))
    while True:
        now = time.ticks_ms()
        up += time.ticks_diff(now, start) / 1000
        start = now
        try:
            if link is None:
                link = connect()
                node.hello()
                buzzer.link(True, up)
            link.check_msg()
            while said:
                topic, text = said.pop(0)
                if not topic.endswith("/cmd"):
                    if buzzer.hear(topic.split("/")[-1], text, up):
                        store("firing", 1 if buzzer.firing else 0)
                    continue
                what = node.obey(text, new_boot)
                if what == "rebirth":  # the will carries the boot number
                    link.disconnect()
                    link = connect()
                    node.hello()
                elif what == "beep":
                    buzzer.beep(up)
                elif what == "identify":
                    blink_until = up + 10
        except OSError:
            link = None
            buzzer.link(False, up)
        if up >= next_turn:
            next_turn = up + EVERY
            celsius = outlet()
            buzzer.outlet(None if isinstance(celsius, str) else celsius, up)
            try:
                node.measure([("firebox", max31855(frame(pins[0]))), ("wall", max31855(frame(pins[1]))), ("outlet", celsius)], round(up, 3))
            except OSError:
                link = None
                buzzer.link(False, up)
        if piezo is not None:
            piezo(tone_on(buzzer.sound(up), up))
        if lamp is not None:
            lamp(up < blink_until and int(up * 4) % 2)
        time.sleep(0.05)


if __name__ == "__main__":
    on_a_computer() if "--print" in sys.argv else on_a_board()
