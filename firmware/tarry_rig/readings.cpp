#include "readings.h"
#include "board.h"
#include "clock.h"
#include "wake.h"
#include <avr/interrupt.h>
#include <util/atomic.h>

namespace {

// The converter wants 50 to 200 kHz for its 10 bits (datasheet): a conversion takes 13 clocks of 125 kHz, 104 us.
#if F_CPU == 16000000
constexpr uint8_t prescaler = _BV(ADPS2) | _BV(ADPS1) | _BV(ADPS0);
#else
constexpr uint8_t prescaler = _BV(ADPS2) | _BV(ADPS1);
#endif

// For the reference to settle and for the first conversion, which the datasheet says to throw away.
constexpr uint32_t settling_ticks = 2000 * ticks_per_microsecond;

ReadingBatches batches;
bool on;
bool end_owed;
bool converting_y;
uint8_t reference;
uint32_t interval;
Tick due;
Tick reading_due;
uint16_t x;

void convert(uint8_t channel) {
    ADMUX = static_cast<uint8_t>(reference | channel);
    ADCSRA |= _BV(ADSC);
}

void advance(Tick &tick, uint32_t ticks) {
    const uint32_t count = static_cast<uint32_t>(tick.count) + (ticks & 0xffff);
    tick.count = static_cast<uint16_t>(count);
    tick.wraps += (ticks >> 16) + (count >> 16);
}

}

void readings_begin(uint32_t interval_ticks, bool against_supply) {
    interval = interval_ticks;
    reference = against_supply ? _BV(REFS0) : 0;
    batches.begin();
    converting_y = true;
    DIDR0 |= WIPER_DIGITAL_OFF;
    ADCSRA = static_cast<uint8_t>(_BV(ADEN) | prescaler);
    convert(WIPER_Y_CHANNEL);
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        due = clock_now_in_interrupt();
        advance(due, settling_ticks);
        OCR1B = due.count;
        on = true;
    }
}

void readings_stop() {
    if (!on)
        return;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        on = false;
        // The light sensor's comparator borrows the converter's input selector while the converter is off.
        ADCSRA = 0;
        DIDR0 &= static_cast<uint8_t>(~WIPER_DIGITAL_OFF);
        batches.finish();
        end_owed = true;
    }
}

bool readings_busy() { return on || end_owed; }
bool readings_end_due() { return end_owed && !batches.ready(); }
void readings_end_told() { end_owed = false; }
ReadingBatches &readings_batches() { return batches; }

void readings_alarm() {
    if (!on)
        return;
    const uint32_t now = clock_now_in_interrupt().low();
    if (!reached(now, due.low()))
        return;
    converting_y = false;
    // What the conversion before left pending is dropped with the same write.
    ADCSRA |= static_cast<uint8_t>(_BV(ADIE) | _BV(ADIF));
    convert(WIPER_X_CHANNEL);
    reading_due = due;
    advance(due, interval);
    // One that another interrupt has held up for a whole interval is not taken late.
    while (reached(now, due.low())) {
        batches.lose();
        reading_due = due;
        advance(due, interval);
    }
    OCR1B = due.count;
}

ISR(ADC_vect) {
    if (converting_y) {
        batches.add(reading_due, x, ADC);
        ADCSRA &= static_cast<uint8_t>(~_BV(ADIE));
        wake();
    } else {
        x = ADC;
        converting_y = true;
        convert(WIPER_Y_CHANNEL);
    }
}
