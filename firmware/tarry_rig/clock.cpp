#include "clock.h"
#include "wake.h"
#include <avr/interrupt.h>
#include <util/atomic.h>

volatile uint32_t clock_wraps;

void clock_start() {
    TCCR1A = 0;
    TCNT1 = 0;
    TCCR1B = _BV(CS10);
    TIMSK1 = _BV(TOIE1) | _BV(ICIE1) | _BV(OCIE1B);
}

Tick clock_now() {
    Tick tick;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { tick = clock_now_in_interrupt(); }
    return tick;
}

void clock_alarm(uint32_t due) {
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        // Written only where it changes: the loop asks for the same alarm at every wake.
        if (OCR1B != static_cast<uint16_t>(due))
            OCR1B = static_cast<uint16_t>(due);
        if (reached(clock_now_in_interrupt().low(), due))
            wake();
    }
}

ISR(TIMER1_OVF_vect) {
    clock_wraps = clock_wraps + 1;
    wake();
}
