// Frames of the usual converter chips, decoded apart from any bus, so that a computer can test them.
// Sources: the makers' data sheets as cited in the project's handbook (bit tables, power-on patterns, checksum).
#pragma once
#include <cstdint>

namespace kiln {

// The words of the wire for a probe that gives no temperature; `ok` goes with a number.
enum class Status { ok, open, shortGnd, shortVcc, range, bus, crc, notConverted, saturated };

inline const char* wordOf(Status status) {
  switch (status) {
    case Status::ok: return "";
    case Status::open: return "fault:open";
    case Status::shortGnd: return "fault:short-gnd";
    case Status::shortVcc: return "fault:short-vcc";
    case Status::range: return "fault:range";
    case Status::bus: return "fault:bus";
    case Status::crc: return "fault:crc";
    case Status::notConverted: return "fault:not-converted";
    case Status::saturated: return "fault:saturated";
  }
  return "fault:bus";
}

struct Reading {
  Status status;
  double hotC;          // meaningless unless status is ok
  double coldJunctionC; // meaningless unless hasColdJunction
  bool hasColdJunction;
};

inline Reading fault(Status status) { return {status, 0, 0, false}; }

// MAX31855: 32 bits. D31..D18 hot end, signed, 0.25 °C; D17 and D3 are always 0; D16 any fault; D15..D4 cold junction, signed,
// 0.0625 °C; D2 short to supply, D1 short to ground, D0 open. Its number assumes a straight line: send it as it is with
// "linearised":false and its cold junction beside it; the service corrects it.
inline Reading max31855(uint32_t frame) {
  // all ones: data line stuck high; all zeros: no power or no chip (an honest 0.00 with 0.0000 is not to be had beside a fire)
  if (frame == 0 || (frame & 0x00020008u) != 0) return fault(Status::bus);
  if (frame & 0x1) return fault(Status::open);
  if (frame & 0x2) return fault(Status::shortGnd);
  if (frame & 0x4) return fault(Status::shortVcc);
  if (frame & 0x00010000u) return fault(Status::bus);
  const int32_t word = static_cast<int32_t>(frame);
  return {Status::ok, (word >> 18) * 0.25, (static_cast<int16_t>(frame & 0xffff) >> 4) * 0.0625, true};
}

// MAX6675: 16 bits. D15 and D1 always 0; D14..D3 temperature, 0.25 °C, never below 0; D2 open. It tells no cold junction.
inline Reading max6675(uint16_t word) {
  if (word & 0x8002) return fault(Status::bus);
  if (word & 0x0004) return fault(Status::open);
  return {Status::ok, (word >> 3) * 0.25, 0, false};
}

// MAX31856: registers 0x0A..0x0F as read in one go: cold junction (2 bytes), hot end (3), fault status. It linearises by itself.
inline Reading max31856(const uint8_t r[6]) {
  bool same = true;
  for (int i = 1; i < 6; i++) same = same && r[i] == r[0];
  if (same && (r[0] == 0xff || r[0] == 0x00)) return fault(Status::bus);
  const uint8_t status = r[5];
  if (status & 0x01) return fault(Status::open);
  if (status & 0x02) return fault(Status::shortVcc);
  if (status & 0xc0) return fault(Status::range);
  const int32_t hot = static_cast<int32_t>(static_cast<uint32_t>(r[2]) << 24 | static_cast<uint32_t>(r[3]) << 16 | static_cast<uint32_t>(r[4]) << 8) >> 8;
  const int16_t cold = static_cast<int16_t>(r[0] << 8 | r[1]);
  return {Status::ok, hot / 4096.0, cold / 256.0, true};
}

// Checksum of the one-wire family: x^8 + x^5 + x^4 + 1, reflected, from 0.
inline uint8_t crc8(const uint8_t* bytes, int n) {
  uint8_t crc = 0;
  for (int i = 0; i < n; i++) {
    crc ^= bytes[i];
    for (int bit = 0; bit < 8; bit++) crc = (crc & 1) ? (crc >> 1) ^ 0x8c : crc >> 1;
  }
  return crc;
}

// DS18B20: the nine bytes of its scratchpad. 85 °C exactly is what it says before its first conversion.
inline Reading ds18b20(const uint8_t pad[9]) {
  bool same = true;
  for (int i = 1; i < 9; i++) same = same && pad[i] == pad[0];
  if (same && (pad[0] == 0xff || pad[0] == 0x00)) return fault(Status::bus);
  if (crc8(pad, 8) != pad[8]) return fault(Status::crc);
  int16_t word = static_cast<int16_t>(pad[1] << 8 | pad[0]);
  // at lower resolution the last bits are undefined: bits 6 and 5 of the configuration say how many
  const int undefined = 3 - ((pad[4] >> 5) & 3);
  word = static_cast<int16_t>(word & ~((1 << undefined) - 1));
  if (word == 0x0550) return fault(Status::notConverted);
  return {Status::ok, word / 16.0, 0, false};
}

}  // namespace kiln
