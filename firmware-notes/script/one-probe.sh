#!/bin/sh
# A node in plain shell for a single-board computer: one DS18B20 at the condenser outlet, as the kernel shows it.
# Needs mosquitto_pub and mosquitto_sub. KILN_BROKER=192.168.4.1 KILN_NODE=n2 ./one-probe.sh
# Without a standing connection there is no will: the service then tells a lost node by its silence.
BROKER=${KILN_BROKER:-127.0.0.1}
SITE=${KILN_SITE:-yard}
NODE=${KILN_NODE:-n1}
SENSOR=${SENSOR:-/sys/bus/w1/devices/28-*/temperature}
COUNTER=${COUNTER:-$HOME/.kiln-boot}
EVERY=${EVERY:-5}
ROUNDS=${ROUNDS:-0} # 0: for ever

say() { # kind, text, more options
  kind=$1 text=$2
  shift 2
  mosquitto_pub -h "$BROKER" -q 1 -t "firing/1/$SITE/$NODE/$kind" -m "$text" "$@"
}

seconds() { cut -d ' ' -f 1 /proc/uptime; }

# a boot number that is new at every start, and the seconds since then
start=$(seconds)
born() {
  boot=$(($(cat "$COUNTER" 2>/dev/null || echo 0) + 1))
  echo "$boot" >"$COUNTER"
  seq=0
  say info '{"fw":"1.0.0","hw":"shell","boot":'$boot',"clock":"none","buffer":0,"channels":[{"n":"outlet","u":"Cel","sensor":"ds18b20","linearised":true,"period":'$EVERY',"lsb":0.0625}]}' -r
  say state '{"s":"ready","boot":'$boot'}' -r
}

# orders of the service come in beside, a line each
orders=$(mktemp)
obeyed=0
listen() {
  mosquitto_sub -h "$BROKER" -q 1 -t "firing/1/$SITE/$NODE/cmd" >>"$orders" 2>/dev/null &
  ears=$!
}
obey() {
  kill -0 "$ears" 2>/dev/null || listen
  while [ "$obeyed" -lt "$(wc -l <"$orders")" ]; do
    obeyed=$((obeyed + 1))
    order=$(sed -n "${obeyed}p" "$orders")
    id=$(printf '%s' "$order" | sed -n 's/.*"id" *: *"\([^"]*\)".*/\1/p')
    case $order in
      *'"do":"rebirth"'*) say ack '{"id":"'$id'","ok":true}' && born ;;
      *) say ack '{"id":"'$id'","ok":false}' ;;
    esac
  done
}

born
listen
trap 'say state "{\"s\":\"disconnected\",\"boot\":$boot}" -r; exit' INT TERM
trap 'kill "$ears" 2>/dev/null; rm -f "$orders"' EXIT

round=0
while [ "$ROUNDS" -eq 0 ] || [ "$round" -lt "$ROUNDS" ]; do
  round=$((round + 1))
  obey
  seq=$((seq + 1))
  milli=$(cat $SENSOR 2>/dev/null)
  case $milli in
    '') value='"vs":"fault:bus"' ;;
    85000) value='"vs":"fault:not-converted"' ;;
    *) value='"v":'$(awk "BEGIN { print $milli / 1000 }") ;;
  esac
  up=$(awk "BEGIN { print $(seconds) - $start }")
  say readings '[{"bn":"'$SITE/$NODE'/","bu":"Cel","n":"outlet",'$value',"t":0,"ut":'$EVERY'},{"n":"boot","u":"count","v":'$boot'},{"n":"seq","u":"count","v":'$seq'},{"n":"up","u":"s","v":'$up'}]'
  sleep "$EVERY"
done
