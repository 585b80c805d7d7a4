// A node with three probes for an ESP32 board: firebox and wall behind MAX31855 chips, outlet on a DS18B20.
// The frames, the packs and the back-fill are in ../portable and are tested on a computer; this file is only the bus and the link.
// Not compiled by the project's tests: it needs the board's own tools (ESP32 core for the Arduino environment, with OneWire).
#include <Arduino.h>
#include <OneWire.h>
#include <Preferences.h>
#include <SPI.h>
#include <WiFi.h>
#include <mqtt_client.h>

#include "../portable/backfill.hpp"
#include "../portable/frames.hpp"
#include "../portable/pack.hpp"

// What you fill in
const char* wifiName = "kiln";
const char* wifiPassword = "";
const char* broker = "mqtt://192.168.4.1:1883";
const std::string site = "yard", node = "n1";
const int fireboxPin = 5, wallPin = 17, outletPin = 4;
const uint32_t everyMs = 5000;

const std::string base = site + "/" + node + "/";
const std::string topic = "firing/1/" + base;
const std::string birth =
    "\"fw\":\"1.0.0\",\"hw\":\"esp32\",\"clock\":\"none\",\"buffer\":600,\"channels\":["
    "{\"n\":\"firebox\",\"u\":\"Cel\",\"sensor\":\"K\",\"converter\":\"max31855\",\"linearised\":false,\"cj\":\"firebox/cj\",\"period\":5,\"lsb\":0.25},"
    "{\"n\":\"wall\",\"u\":\"Cel\",\"sensor\":\"K\",\"converter\":\"max31855\",\"linearised\":false,\"cj\":\"wall/cj\",\"period\":5,\"lsb\":0.25},"
    "{\"n\":\"outlet\",\"u\":\"Cel\",\"sensor\":\"ds18b20\",\"linearised\":true,\"period\":5,\"lsb\":0.0625}]";

kiln::Identity who;
kiln::Backfill kept(600);  // 50 minutes at 5 s, about 300 kB: needs a board with PSRAM, else fewer
OneWire wire(outletPin);
esp_mqtt_client_handle_t client;
volatile bool connected = false;
volatile int waitingFor = -1;  // message id of the backlog pack on its way

uint32_t readFrame(int pin) {
  SPI.beginTransaction(SPISettings(1000000, MSBFIRST, SPI_MODE0));
  digitalWrite(pin, LOW);
  const uint32_t frame = SPI.transfer32(0);
  digitalWrite(pin, HIGH);
  SPI.endTransaction();
  return frame;
}

kiln::Reading readOutlet() {
  uint8_t pad[9] = {};
  if (!wire.reset()) return kiln::fault(kiln::Status::bus);
  wire.skip();
  wire.write(0xBE);
  wire.read_bytes(pad, 9);
  // the next conversion runs (750 ms) while the node waits for its next turn
  wire.reset();
  wire.skip();
  wire.write(0x44);
  return kiln::ds18b20(pad);
}

void say(const char* kind, const std::string& text, bool retain) {
  esp_mqtt_client_publish(client, (topic + kind).c_str(), text.c_str(), text.size(), 1, retain);
}

void onEvent(void*, esp_event_base_t, int32_t id, void* data) {
  if (id == MQTT_EVENT_CONNECTED) {
    say("info", "{\"boot\":" + std::to_string(who.boot) + "," + birth + "}", true);
    say("state", kiln::stateDocument("ready", who.boot), true);
    connected = true;
  }
  if (id == MQTT_EVENT_DISCONNECTED) {
    connected = false;
    waitingFor = -1;
  }
  if (id == MQTT_EVENT_PUBLISHED && static_cast<esp_mqtt_event_handle_t>(data)->msg_id == waitingFor) waitingFor = -2;
}

void setup() {
  // a boot number kept in flash: new at every start, or the service would take new readings for old ones
  Preferences flash;
  flash.begin("kiln");
  who.boot = flash.getUInt("boot", 0) + 1;
  flash.putUInt("boot", who.boot);
  flash.end();
  for (int pin : {fireboxPin, wallPin}) {
    pinMode(pin, OUTPUT);
    digitalWrite(pin, HIGH);
  }
  SPI.begin();
  WiFi.begin(wifiName, wifiPassword);
  static const std::string will = kiln::stateDocument("lost", who.boot), stateTopic = topic + "state";
  esp_mqtt_client_config_t config = {};
  config.broker.address.uri = broker;
  config.session.keepalive = 15;
  config.session.last_will.topic = stateTopic.c_str();
  config.session.last_will.msg = will.c_str();
  config.session.last_will.qos = 1;
  config.session.last_will.retain = true;
  client = esp_mqtt_client_init(&config);
  esp_mqtt_client_register_event(client, MQTT_EVENT_ANY, onEvent, nullptr);
  esp_mqtt_client_start(client);
}

void loop() {
  static uint32_t next = 0;
  const uint32_t now = millis();
  if (static_cast<int32_t>(now - next) >= 0) {
    next = now + everyMs;
    who.seq++;
    who.up = esp_timer_get_time() / 1e6;  // millis() would start again after 49 days
    kiln::Pack pack(base, everyMs / 1000.0);
    pack.add("firebox", kiln::max31855(readFrame(fireboxPin)));
    pack.add("wall", kiln::max31855(readFrame(wallPin)));
    pack.add("outlet", readOutlet());
    const std::string text = pack.close(who);
    if (connected) say("readings", text, false);
    else kept.keep(text);
  }
  if (waitingFor == -2) {
    kept.acknowledged();
    waitingFor = -1;
  }
  if (connected && waitingFor == -1 && !kept.empty()) {
    const std::string& text = kept.oldest();
    waitingFor = esp_mqtt_client_publish(client, (topic + "backlog").c_str(), text.c_str(), text.size(), 1, 0);
  }
  delay(20);
}
