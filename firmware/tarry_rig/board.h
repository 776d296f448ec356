#pragma once
#include <avr/io.h>

// Pins, and what the two controllers name differently. The press pin is on another port than ICP1, so that pressing
// cannot disturb the response line.

#if F_CPU == 16000000
#define CLOCK_NAME "16"
#elif F_CPU == 8000000
#define CLOCK_NAME "8"
#else
#error "The rig runs at 16 MHz or 8 MHz."
#endif

#if defined(__AVR_ATmega328P__)

#define BOARD_NAME "atmega328p-" CLOCK_NAME
#define PRESS_PORT PORTD   // D2
#define PRESS_DDR DDRD
#define PRESS_BIT 2
#define RESPONSE_PORT PORTB   // D8, ICP1
#define RESPONSE_PIN PINB
#define RESPONSE_BIT 0
// Light: sensor on D6 (AIN0), threshold from D3 (OC2B) through a low-pass into D7 (AIN1).
#define CONVERTER_PORT PORTC
#define CONVERTER_DDR DDRC
#define CONVERTER_SELECT_BIT 0   // A0
#define CONVERTER_CLOCK_BIT 1    // A1
#define CONVERTER_DATA_BIT 2     // A2
#define WIPER_X_CHANNEL 3   // A3
#define WIPER_Y_CHANNEL 4   // A4
#define WIPER_DIGITAL_OFF (_BV(ADC3D) | _BV(ADC4D))

#elif defined(__AVR_ATmega32U4__)

#define BOARD_NAME "atmega32u4-" CLOCK_NAME
#define PRESS_PORT PORTB   // D9
#define PRESS_DDR DDRB
#define PRESS_BIT 5
#define RESPONSE_PORT PORTD   // D4, ICP1
#define RESPONSE_PIN PIND
#define RESPONSE_BIT 4
// Light: sensor on D7 (AIN0), threshold from D5 (OC3A) through a low-pass into A0 (ADC7).
#define CONVERTER_PORT PORTB
#define CONVERTER_DDR DDRB
#define CONVERTER_SELECT_BIT 6   // D10
#define CONVERTER_CLOCK_BIT 1    // SCK
#define CONVERTER_DATA_BIT 2     // MOSI
#define WIPER_X_CHANNEL 6   // A1 (PF6)
#define WIPER_Y_CHANNEL 5   // A2 (PF5)
#define WIPER_DIGITAL_OFF (_BV(ADC6D) | _BV(ADC5D))

#else
#error "The rig needs an ATmega328P or an ATmega32U4."
#endif
