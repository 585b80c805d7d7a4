// A node with three probes for an ESP32 board: firebox and wall behind MAX31855 chips, outlet on a DS18B20. It obeys `cmd`; with a piezo
// on a pin it is a buzzer as well, with a limit of its own on the outlet.
// Frames, packs, back-fill, orders and the buzzer's mind are in ../portable and are tested on a computer; this file is only bus and link.
// Not compiled by the project's tests: it needs the board's own tools (ESP32 core for the Arduino environment, with OneWire).
#include <Arduino.h>
#include <OneWire.h>
#include <Preferences.h>
#include <SPI.h>
#include <WiFi.h>
#include <mqtt_client.h>

#include "../portable/backfill.hpp"
#include "../portable/buzzer.hpp"
#include "../portable/frames.hpp"
#include "../portable/orders.hpp"
#include "../portable/pack.hpp"

// What you fill in
const char* wifiName = "kiln";
const char* wifiPassword = "";
const char* broker = "mqtt://192.168.4.1:1883";
const std::string site = "yard", node = "n1";
const int fireboxPin = 5, wallPin = 17, outletPin = 4;
const int piezoPin = -1, lampPin = 2;  // -1: not fitted
const uint32_t everyMs = 5000;

const std::string base = site + "/" + node + "/";
const std::string topic = "firing/1/" + base, server = "firing/1/" + site + "/server/";
const std::string birth =
    "\"fw\":\"1.0.0\",\"hw\":\"esp32\",\"clock\":\"none\",\"buffer\":600,\"channels\":["
    "{\"n\":\"firebox\",\"u\":\"Cel\",\"sensor\":\"K\",\"converter\":\"max31855\",\"linearised\":false,\"cj\":\"firebox/cj\",\"period\":5,\"lsb\":0.25},"
    "{\"n\":\"wall\",\"u\":\"Cel\",\"sensor\":\"K\",\"converter\":\"max31855\",\"linearised\":false,\"cj\":\"wall/cj\",\"period\":5,\"lsb\":0.25},"
    "{\"n\":\"outlet\",\"u\":\"Cel\",\"sensor\":\"ds18b20\",\"linearised\":true,\"period\":5,\"lsb\":0.0625}]";

kiln::Identity who;
kiln::Backfill kept(600);  // 50 minutes at 5 s, about 300 kB: needs a board with PSRAM, else fewer
OneWire wire(outletPin);
esp_mqtt_client_handle_t client;
kiln::Buzzer buzzer(false);
uint64_t blinkUntil = 0;
struct Heard {
  std::string name, text;
};
QueueHandle_t heard;  // from the link's own task to the loop, which alone changes anything
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

uint64_t nowMs() { return esp_timer_get_time() / 1000; }  // millis() would start again after 49 days

// A boot number kept in flash: new at every start, or the service would take new readings for old ones.
uint32_t newBoot() {
  Preferences flash;
  flash.begin("kiln");
  const uint32_t boot = flash.getUInt("boot", 0) + 1;
  flash.putUInt("boot", boot);
  flash.end();
  return boot;
}

void keepFiring(bool firing) {
  Preferences flash;
  flash.begin("kiln");
  flash.putBool("firing", firing);
  flash.end();
}

bool keptFiring() {
  Preferences flash;
  flash.begin("kiln");
  const bool firing = flash.getBool("firing", false);
  flash.end();
  return firing;
}

void say(const char* kind, const std::string& text, bool retain) {
  esp_mqtt_client_publish(client, (topic + kind).c_str(), text.c_str(), text.size(), 1, retain);
}

void onEvent(void*, esp_event_base_t, int32_t id, void* data) {
  const auto* event = static_cast<esp_mqtt_event_handle_t>(data);
  if (id == MQTT_EVENT_CONNECTED) {
    esp_mqtt_client_subscribe(client, (topic + "cmd").c_str(), 1);
    if (piezoPin >= 0)
      for (const char* name : {"alert", "beat", "state"}) esp_mqtt_client_subscribe(client, (server + name).c_str(), 1);
    say("info", "{\"boot\":" + std::to_string(who.boot) + "," + birth + "}", true);
    say("state", kiln::stateDocument("ready", who.boot), true);
    connected = true;
  }
  if (id == MQTT_EVENT_DISCONNECTED) {
    connected = false;
    waitingFor = -1;
  }
  if (id == MQTT_EVENT_PUBLISHED && event->msg_id == waitingFor) waitingFor = -2;
  // what the service says is short and comes whole; what comes in parts is none of it
  if (id == MQTT_EVENT_DATA && event->topic_len > 0 && event->data_len == event->total_data_len) {
    const std::string from(event->topic, event->topic_len);
    auto* one = new Heard{from.substr(from.rfind('/') + 1), std::string(event->data, event->data_len)};
    if (xQueueSend(heard, &one, 0) != pdTRUE) delete one;
  }
}

// The will carries the boot number, so that a new one needs a new connection.
void connect() {
  static std::string will, stateTopic;
  will = kiln::stateDocument("lost", who.boot);
  stateTopic = topic + "state";
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

void obey(const std::string& text) {
  const kiln::Order order = kiln::orderOf(text);
  const bool can = order == kiln::Order::rebirth || (order == kiln::Order::identify && lampPin >= 0) || (order == kiln::Order::beep && piezoPin >= 0);
  say("ack", kiln::ackDocument(text, can), false);
  if (!can) return;
  if (order == kiln::Order::beep) buzzer.beep(nowMs());
  if (order == kiln::Order::identify) blinkUntil = nowMs() + 10000;
  if (order != kiln::Order::rebirth) return;
  esp_mqtt_client_disconnect(client);
  esp_mqtt_client_stop(client);
  esp_mqtt_client_destroy(client);
  connected = false;
  waitingFor = -1;
  // what is kept keeps the identity that it was composed with
  who.boot = newBoot();
  who.seq = 0;
  connect();
}

void listen() {
  Heard* one;
  while (xQueueReceive(heard, &one, 0) == pdTRUE) {
    if (one->name == "cmd") obey(one->text);
    else if (buzzer.hear(one->name, one->text, nowMs())) keepFiring(buzzer.firing());
    delete one;
  }
  buzzer.link(connected, nowMs());
  if (piezoPin >= 0) digitalWrite(piezoPin, kiln::toneOn(buzzer.sound(nowMs()), nowMs()));
  if (lampPin >= 0) digitalWrite(lampPin, nowMs() < blinkUntil && nowMs() / 250 % 2);
}

void setup() {
  who.boot = newBoot();
  buzzer = kiln::Buzzer(keptFiring());
  heard = xQueueCreate(20, sizeof(Heard*));
  for (int pin : {fireboxPin, wallPin}) {
    pinMode(pin, OUTPUT);
    digitalWrite(pin, HIGH);
  }
  for (int pin : {piezoPin, lampPin})
    if (pin >= 0) pinMode(pin, OUTPUT);
  SPI.begin();
  WiFi.begin(wifiName, wifiPassword);
  connect();
}

void loop() {
  listen();
  static uint32_t next = 0;
  const uint32_t now = millis();
  if (static_cast<int32_t>(now - next) >= 0) {
    next = now + everyMs;
    who.seq++;
    who.up = nowMs() / 1e3;
    kiln::Pack pack(base, everyMs / 1000.0);
    pack.add("firebox", kiln::max31855(readFrame(fireboxPin)));
    pack.add("wall", kiln::max31855(readFrame(wallPin)));
    const kiln::Reading outlet = readOutlet();
    pack.add("outlet", outlet);
    buzzer.outlet(outlet, nowMs());
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
