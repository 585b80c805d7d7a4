// A buzzer's own mind: what it plays of what it hears, and what it plays when it hears nothing (wire-format.md, section 8).
#pragma once
#include <cstdint>
#include <cstdlib>
#include <string>

#include "frames.hpp"
#include "orders.hpp"

namespace kiln {

struct Sound {
  int pattern;  // 0 nothing to 3
  bool alone;   // nobody says any more that all is well
  bool test;
};

// Times are milliseconds that only grow: esp_timer_get_time() / 1000, for millis() starts again after 49 days.
class Buzzer {
 public:
  static constexpr uint64_t silenceMs = 8000, onDelayMs = 15000, testMs = 2000;
  static constexpr double ownLimitC = 75, deadBandK = 2;

  // firing: what the last beat said, kept in flash, so that a buzzer that restarts in the dark still minds.
  explicit Buzzer(bool firing) : firing_(firing) {}

  // A link that is back is believed only once a beat has come over it.
  void link(bool up, uint64_t at) {
    if (linked_ && !up) lastBeat_ = at - silenceMs;
    linked_ = up;
  }

  // alert, beat or state of the service. True when what must be kept in flash has changed.
  bool hear(const std::string& name, const std::string& document, uint64_t at) {
    if (name == "alert") {
      const int sound = std::atoi(valueOf(document, "sound").c_str());
      pattern_ = valueOf(document, "level") == "none" || sound < 0 ? 0 : sound > 3 ? 3 : sound;
    } else if (name == "state") {
      online_ = valueOf(document, "s") == "online";
    } else if (name == "beat") {
      const bool before = firing_;
      firing_ = valueOf(document, "firing") == "true";
      lastBeat_ = at;
      online_ = true;
      return firing_ != before;
    }
    return false;
  }

  // Of an outlet probe of its own. A fault changes nothing.
  void outlet(const Reading& reading, uint64_t at) {
    if (reading.status != Status::ok) return;
    if (reading.hotC >= ownLimitC) {
      if (!hot_) hotSince_ = at;
      hot_ = true;
    } else if (reading.hotC < ownLimitC - deadBandK) {
      hot_ = false;
    }
  }

  void beep(uint64_t at) { testUntil_ = at + testMs; }
  bool firing() const { return firing_; }

  // While beats come, the service decides about the outlet: it knows whether cloths are wet.
  Sound sound(uint64_t at) const {
    const bool deaf = !linked_ || !online_ || at - lastBeat_ >= silenceMs;
    const bool hot = deaf && hot_ && at - hotSince_ >= onDelayMs;
    return {hot && pattern_ < 2 ? 2 : pattern_, firing_ && deaf, at < testUntil_};
  }

 private:
  bool firing_, linked_ = false, online_ = true, hot_ = false;
  int pattern_ = 0;
  uint64_t lastBeat_ = 0, testUntil_ = 0, hotSince_ = 0;
};

// Whether the piezo sounds now: told apart by rhythm. A test is one long tone, alone two short ones a second with a rest.
inline bool toneOn(const Sound& sound, uint64_t at) {
  if (sound.test) return true;
  if (sound.pattern == 3) return at % 500 < 350;
  if (sound.alone) return at % 1000 < 500 && at % 250 < 120;
  if (sound.pattern == 2) return at % 3000 < 600 && at % 300 < 200;
  return sound.pattern == 1 && at % 30000 < 300;
}

}  // namespace kiln
