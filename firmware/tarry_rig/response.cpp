#include "response.h"
#include "board.h"
#include "clock.h"
#include "comparator.h"
#include "wake.h"
#include <avr/cpufunc.h>
#include <avr/interrupt.h>
#include <util/atomic.h>

static volatile Source source;
static bool falling;
static Edges edges;

static inline void count_edge(uint32_t at) {
    if (edges.count == 0)
        edges.first = at;
    if (edges.count != 0xff)
        edges.count++;
    edges.last = at;
    wake();
}

static void select_edge() {
    if (falling)
        TCCR1B &= static_cast<uint8_t>(~_BV(ICES1));
    else
        TCCR1B |= _BV(ICES1);
}

void response_configure(Source new_source, bool new_falling, uint8_t threshold) {
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        source = Source::echo;
        falling = new_falling;
        select_edge();
        // An open collector needs the pull-up; a driven line is left alone.
        if (falling && new_source == Source::edge)
            RESPONSE_PORT |= _BV(RESPONSE_BIT);
        else
            RESPONSE_PORT &= static_cast<uint8_t>(~_BV(RESPONSE_BIT));
        if (new_source == Source::light)
            comparator_start(threshold);
        else
            comparator_stop();
    }
    // Turning the edge or the source round can raise a capture of its own: it is taken here, while it does not count.
    // The flag is not cleared through TIFR1, so that no other flag of the timer can be lost with it.
    _NOP();
    _NOP();
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        source = new_source;
        edges = Edges();
    }
}

bool response_line_active() {
    if (source == Source::echo)
        return false;
    const bool high = source == Source::light ? comparator_high() : RESPONSE_PIN & _BV(RESPONSE_BIT);
    return high != falling;
}

Edges response_edges() {
    Edges seen;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { seen = edges; }
    return seen;
}

Edges response_take_edges() {
    const Edges seen = edges;
    edges.count = 0;
    return seen;
}

void response_echo(uint32_t at) {
    if (source == Source::echo)
        count_edge(at);
}

// The next capture overwrites the last, and a chattering line makes several within microseconds. So the value is taken
// with two instructions before the handler saves its registers: only an edge within a microsecond of the first can
// then displace it (or within the time that another handler has just kept this one waiting).
extern "C" {
volatile uint16_t captured_count __attribute__((used));
void __vector_capture_taken() __attribute__((signal, used));
}

ISR(TIMER1_CAPT_vect, ISR_NAKED) {
    asm volatile("push r24\n\t"
                 "lds r24, %0\n\t"
                 "sts captured_count, r24\n\t"
                 "lds r24, %0+1\n\t"
                 "sts captured_count+1, r24\n\t"
                 "pop r24\n\t"
                 "jmp __vector_capture_taken\n\t"
                 :
                 : "n"(_SFR_MEM_ADDR(ICR1)));
}

void __vector_capture_taken() {
    if (source != Source::echo)
        count_edge(clock_extend(captured_count).low());
}
