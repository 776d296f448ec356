#include "received.h"
#include "byte_ring.h"
#include "clock.h"
#include "response.h"
#include "wake.h"
#include <util/atomic.h>

static constexpr uint8_t echo_byte = 0x06;

static ByteRing ring;
static uint16_t lost;
static uint8_t line_begin = '\n';
static Tick ping_tick;

void received(uint8_t byte) {
    if (byte == echo_byte) {
        response_echo(clock_now_in_interrupt().low());
        return;
    }
    if (byte == '\n') {
        if (line_begin == 'p')
            ping_tick = clock_now_in_interrupt();
        line_begin = '\n';
    } else if (line_begin == '\n') {
        line_begin = byte;
    }
    if (!ring.put(byte))
        received_lost();
    wake();
}

void received_lost() {
    if (lost != 0xffff)
        lost++;
}

bool received_take(uint8_t &byte) { return ring.take(byte); }

uint16_t received_lost_count() {
    uint16_t count;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { count = lost; }
    return count;
}

Tick received_ping_tick() {
    Tick tick;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { tick = ping_tick; }
    return tick;
}
