// Runs the portable part on a computer: every argument line of standard input is one question, every line of output its answer.
//   g++ -std=c++17 -Wall -Wextra -Werror -o check check.cpp && echo "max31855 01901900" | ./check
#include <cstdlib>
#include <iostream>
#include <sstream>

#include "../portable/backfill.hpp"
#include "../portable/buzzer.hpp"
#include "../portable/frames.hpp"
#include "../portable/orders.hpp"
#include "../portable/pack.hpp"

using namespace kiln;

static void show(const Reading& r) {
  if (r.status != Status::ok) std::cout << wordOf(r.status);
  else {
    std::cout << number(r.hotC);
    if (r.hasColdJunction) std::cout << " " << number(r.coldJunctionC);
  }
  std::cout << "\n";
}

static void bytesOf(std::istream& in, uint8_t* to, int n) {
  std::string hex;
  for (int i = 0; i < n && in >> hex; i++) to[i] = static_cast<uint8_t>(std::strtoul(hex.c_str(), nullptr, 16));
}

// Two readings live, three kept while the link is away in a buffer of two, then the rest of the story.
static void story() {
  Backfill kept(2);
  Identity who{17, 0, 0};
  const char* const kinds[] = {"readings", "kept", "kept", "kept", "readings"};
  for (int i = 0; i < 5; i++) {
    who.seq = i + 1;
    who.up = 4 + 5 * i;
    Pack pack("yard/n1/", 5);
    pack.add("firebox", max31855(i == 1 ? 0x00011901u : 0x25C42D00u));
    pack.add("wall", max31855(0x128C2800u));
    const uint8_t pad[9] = {0x98, 0x01, 0x4B, 0x46, 0x7F, 0xFF, 0x08, 0x10, 0x22};
    pack.add("outlet", ds18b20(pad));
    const std::string text = pack.close(who);
    if (std::string(kinds[i]) == "readings") std::cout << "readings " << text << "\n";
    else kept.keep(text);
    if (i == 3) {
      for (; !kept.empty(); kept.acknowledged()) std::cout << "backlog " << kept.oldest() << "\n";
    }
  }
  std::cout << "state " << stateDocument("ready", who.boot) << "\n";
  std::cout << "lost " << kept.lost() << "\n";
}

// What a buzzer hears, a line each: milliseconds, what, the rest. `sound` is answered.
static void buzzer(std::istream& in) {
  Buzzer one(false);
  std::string line;
  while (std::getline(in, line) && line != "end") {
    std::istringstream words(line);
    uint64_t at;
    std::string what, rest;
    words >> at >> what >> std::ws;
    std::getline(words, rest);
    if (what == "link") one.link(rest == "up", at);
    else if (what == "beep") one.beep(at);
    else if (what == "outlet") one.outlet(rest == "fault" ? fault(Status::open) : Reading{Status::ok, std::atof(rest.c_str()), 0, false}, at);
    else if (what == "sound") {
      const Sound s = one.sound(at);
      std::cout << s.pattern << (s.alone ? " alone" : "") << (s.test ? " test" : "") << "\n";
    } else one.hear(what, rest, at);
  }
}

int main() {
  std::string line;
  while (std::getline(std::cin, line)) {
    std::istringstream in(line);
    std::string what, hex;
    in >> what;
    if (what == "max31855" && in >> hex) show(max31855(static_cast<uint32_t>(std::strtoul(hex.c_str(), nullptr, 16))));
    else if (what == "max6675" && in >> hex) show(max6675(static_cast<uint16_t>(std::strtoul(hex.c_str(), nullptr, 16))));
    else if (what == "max31856") {
      uint8_t r[6] = {};
      bytesOf(in, r, 6);
      show(max31856(r));
    } else if (what == "ds18b20") {
      uint8_t pad[9] = {};
      bytesOf(in, pad, 9);
      show(ds18b20(pad));
    } else if (what == "crc") {
      std::string text;
      in >> text;
      std::cout << static_cast<int>(crc8(reinterpret_cast<const uint8_t*>(text.data()), static_cast<int>(text.size()))) << "\n";
    } else if (what == "order") {
      std::string document;
      std::getline(in >> std::ws, document);
      const char* const names[] = {"unknown", "rebirth", "identify", "beep"};
      std::cout << names[static_cast<int>(orderOf(document))] << " " << ackDocument(document, orderOf(document) != Order::unknown) << "\n";
    } else if (what == "buzzer") buzzer(std::cin);
    else if (what == "story") story();
    else std::cout << "unknown\n";
  }
}
