#include "clock.h"
#include "wake.h"
#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/atomic.h>

static volatile uint32_t wraps;

void clock_start() {
    TCCR1A = 0;
    TCNT1 = 0;
    TCCR1B = _BV(CS10);
    TIMSK1 = _BV(TOIE1) | _BV(ICIE1) | _BV(OCIE1B);
}

Tick clock_extend(uint16_t count) {
    Tick tick = {wraps, count};
    // A wrap that has happened but is not counted yet belongs to small values only: larger ones were read before it.
    if ((TIFR1 & _BV(TOV1)) && count < 0x8000)
        tick.wraps++;
    return tick;
}

Tick clock_now_in_interrupt() { return clock_extend(TCNT1); }

Tick clock_now() {
    Tick tick;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { tick = clock_now_in_interrupt(); }
    return tick;
}

void clock_alarm(uint32_t due) {
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        OCR1B = static_cast<uint16_t>(due);
        if (reached(clock_now_in_interrupt().low(), due))
            wake();
    }
}

ISR(TIMER1_OVF_vect) {
    wraps = wraps + 1;
    wake();
}
