// What the service says to a node, taken apart: flat documents of section 4 and 7 of wire-format.md, nothing deeper.
#pragma once
#include <string>

namespace kiln {

// The value of one name of a flat document, without its quotes; empty where there is none.
inline std::string valueOf(const std::string& document, const char* name) {
  const std::string key = std::string("\"") + name + "\"";
  size_t at = document.find(key);
  for (; at != std::string::npos; at = document.find(key, at)) {
    at = document.find_first_not_of(" \t\r\n", at + key.size());
    if (at == std::string::npos) return "";
    if (document[at] == ':') break;  // else it was a value that reads like the name
  }
  if (at == std::string::npos || (at = document.find_first_not_of(" \t\r\n", at + 1)) == std::string::npos) return "";
  const bool quoted = document[at] == '"';
  const size_t end = quoted ? document.find('"', at + 1) : document.find_first_of(",} \t\r\n", at);
  if (end == std::string::npos) return "";
  return document.substr(at + quoted, end - at - quoted);
}

enum class Order { unknown, rebirth, identify, beep };

inline Order orderOf(const std::string& document) {
  const std::string what = valueOf(document, "do");
  return what == "rebirth" ? Order::rebirth : what == "identify" ? Order::identify : what == "beep" ? Order::beep : Order::unknown;
}

inline std::string ackDocument(const std::string& order, bool ok) {
  return "{\"id\":\"" + valueOf(order, "id") + "\",\"ok\":" + (ok ? "true" : "false") + "}";
}

}  // namespace kiln
