# A buzzer's own mind, for any board or computer: what it plays of what it hears, and what it plays when it hears nothing.
# Copied beside three_probes.py onto the board. Times are seconds that only grow.
import json

SILENCE = 8  # without a beat while a firing runs
OWN_LIMIT, DEAD_BAND, ON_DELAY = 75, 2, 15  # of an outlet probe of its own, degrees C and seconds
TEST_SOUND = 2


class Buzzer:
    def __init__(self, at, firing):
        """firing: what the last beat said, kept in flash, so that a buzzer that restarts in the dark still minds."""
        self.firing, self.last_beat, self.is_linked, self.is_online = firing, at, False, True
        self.pattern, self.test_until, self.hot_since = 0, at, None

    def link(self, is_up, at):
        if self.is_linked and not is_up:
            self.last_beat = at - SILENCE  # one that is back is believed only once a beat has come over it
        self.is_linked = is_up

    def hear(self, name, text, at):
        """alert, beat or state of the service. True when what must be kept in flash has changed."""
        try:
            said, before = json.loads(text), self.firing
            if name == "alert":
                self.pattern = 0 if said["level"] == "none" else max(0, min(3, int(said["sound"])))
            elif name == "state":
                self.is_online = said["s"] == "online"
            elif name == "beat":
                self.firing, self.last_beat, self.is_online = said["firing"] is True, at, True
            return self.firing != before
        except (ValueError, KeyError, TypeError):
            return False

    def outlet(self, celsius, at):
        """None where the probe gives nothing: that changes nothing."""
        if celsius is None:
            return
        if celsius >= OWN_LIMIT:
            self.hot_since = at if self.hot_since is None else self.hot_since
        elif celsius < OWN_LIMIT - DEAD_BAND:
            self.hot_since = None

    def beep(self, at):
        self.test_until = at + TEST_SOUND

    def sound(self, at):
        """(pattern 0 to 3, alone, test). While beats come, the service decides about the outlet."""
        deaf = not self.is_linked or not self.is_online or at - self.last_beat >= SILENCE
        hot = deaf and self.hot_since is not None and at - self.hot_since >= ON_DELAY
        return (max(2, self.pattern) if hot else self.pattern, self.firing and deaf, at < self.test_until)


def tone_on(sound, at):
    """Whether the piezo sounds now: told apart by rhythm. A test is one long tone, alone two short ones a second with a rest."""
    pattern, alone, test = sound
    if test:
        return True
    if pattern == 3:
        return at % 0.5 < 0.35
    if alone:
        return at % 1 < 0.5 and at % 0.25 < 0.12
    if pattern == 2:
        return at % 3 < 0.6 and at % 0.3 < 0.2
    return pattern == 1 and at % 30 < 0.3
