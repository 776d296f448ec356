#include "serial_choice.h"

#if SERIAL_IS_USB

#include "byte_ring.h"
#include "received.h"
#include "serial.h"
#include <Arduino.h>
#include <util/atomic.h>

// Over USB a byte is stamped when it is read here, not when it came: pings and echoes are later by the USB frame
// (up to 1 ms) and by the turn of the loop. Presses and responses are timed in hardware all the same.

static ByteRing outgoing;

void serial_setup() { Serial.begin(250000); }

void serial_step() {
    while (Serial.available() > 0) {
        const uint8_t byte = static_cast<uint8_t>(Serial.read());
        ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { received(byte); }
    }
    // With no host on the line bytes go nowhere, as they would from a UART; the host asks for what it has missed.
    const bool host_present = Serial.dtr();
    int space = host_present ? Serial.availableForWrite() : outgoing.used();
    uint8_t byte;
    while (space-- > 0 && outgoing.take(byte))
        if (host_present)
            Serial.write(byte);
}

// Opening the port at 1200 baud is how the board IDE asks for an upload.
bool serial_wants_reset() { return Serial.baud() == 1200; }

uint8_t serial_room() { return outgoing.room(); }

void serial_write(const char *bytes, uint8_t length) {
    for (uint8_t i = 0; i < length; i++)
        outgoing.put(static_cast<uint8_t>(bytes[i]));
}

#endif
