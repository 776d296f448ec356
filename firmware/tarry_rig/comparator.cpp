#include "comparator.h"

// Fast PWM without prescaler, 62.5 kHz at 16 MHz: a low-pass of 10 kilohm and 1 uF leaves less than 1/256 of ripple.
// A compare value of t - 1 keeps the pin high for t of 256 counts.

#if defined(__AVR_ATmega328P__)

static void threshold_start(uint8_t threshold) {
    OCR2B = static_cast<uint8_t>(threshold - 1);
    TCCR2A = _BV(COM2B1) | _BV(WGM21) | _BV(WGM20);
    TCCR2B = _BV(CS20);
    DDRD |= _BV(DDD3);
    DIDR1 = _BV(AIN0D) | _BV(AIN1D);
}

static void threshold_stop() {
    TCCR2A = 0;
    DDRD &= static_cast<uint8_t>(~_BV(DDD3));
}

#elif defined(__AVR_ATmega32U4__)

static void threshold_start(uint8_t threshold) {
    OCR3A = static_cast<uint8_t>(threshold - 1);
    TCCR3A = _BV(COM3A1) | _BV(WGM30);
    TCCR3B = _BV(WGM32) | _BV(CS30);
    DDRC |= _BV(DDC6);
    DIDR1 = _BV(AIN0D);
    DIDR0 = _BV(ADC7D);
    // The comparator borrows the converter's input selector, which it gets only while the converter is off.
    ADCSRA &= static_cast<uint8_t>(~_BV(ADEN));
    ADMUX = 7;
    ADCSRB = _BV(ACME);
}

static void threshold_stop() {
    TCCR3A = 0;
    DDRC &= static_cast<uint8_t>(~_BV(DDC6));
}

#endif

void comparator_start(uint8_t threshold) {
    threshold_start(threshold);
    ACSR = _BV(ACIC);
}

void comparator_stop() {
    ACSR = _BV(ACD);
    threshold_stop();
}
