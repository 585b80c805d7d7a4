// One SenML pack and the documents around it, as the wire format of this project asks for them.
#pragma once
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <string>

#include "frames.hpp"

namespace kiln {

// Who says it: a boot number new at every start (a counter kept in flash, or 32 random bits), a count of packs, seconds since the start.
struct Identity {
  uint32_t boot = 0;
  uint32_t seq = 0;
  double up = 0;
};

inline std::string number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4f", value);
  std::string s = text;
  while (s.back() == '0') s.pop_back();
  if (s.back() == '.') s.pop_back();
  return s == "-0" ? "0" : s;
}

class Pack {
 public:
  Pack(const std::string& base, double everyS) : base_(base), everyS_(everyS) {}

  void add(const char* channel, const Reading& reading) {
    if (reading.status != Status::ok) return record("\"n\":\"" + std::string(channel) + "\",\"vs\":\"" + wordOf(reading.status) + "\",\"t\":0");
    record("\"n\":\"" + std::string(channel) + "\",\"v\":" + number(reading.hotC) + ",\"t\":0");
    if (reading.hasColdJunction) record("\"n\":\"" + std::string(channel) + "/cj\",\"v\":" + number(reading.coldJunctionC) + ",\"t\":0");
  }

  std::string close(const Identity& who) {
    record("\"n\":\"boot\",\"u\":\"count\",\"v\":" + std::to_string(who.boot));
    record("\"n\":\"seq\",\"u\":\"count\",\"v\":" + std::to_string(who.seq));
    record("\"n\":\"up\",\"u\":\"s\",\"v\":" + number(who.up));
    return text_ + "]";
  }

 private:
  void record(const std::string& inside) {
    const bool first = text_.empty();
    text_ += first ? "[{\"bn\":\"" + base_ + "\",\"bu\":\"Cel\"," : ",{";
    text_ += inside;
    if (first) text_ += ",\"ut\":" + number(everyS_);
    text_ += "}";
  }

  std::string base_;
  double everyS_;
  std::string text_;
};

inline std::string stateDocument(const char* s, uint32_t boot) {
  return std::string("{\"s\":\"") + s + "\",\"boot\":" + std::to_string(boot) + "}";
}

}  // namespace kiln
