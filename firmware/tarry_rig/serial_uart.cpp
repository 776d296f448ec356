#include "serial_choice.h"

#if !SERIAL_IS_USB

#include "byte_ring.h"
#include "received.h"
#include "serial.h"
#include <avr/interrupt.h>
#include <avr/io.h>

#if defined(__AVR_ATmega328P__)
#define UART_REGISTER(prefix, suffix) prefix##0##suffix
#define UART_RECEIVED_vect USART_RX_vect
#define UART_EMPTY_vect USART_UDRE_vect
#else
#define UART_REGISTER(prefix, suffix) prefix##1##suffix
#define UART_RECEIVED_vect USART1_RX_vect
#define UART_EMPTY_vect USART1_UDRE_vect
#endif

#define UART_STATUS UART_REGISTER(UCSR, A)
#define UART_CONTROL UART_REGISTER(UCSR, B)
#define UART_DATA UART_REGISTER(UDR, )

static ByteRing outgoing;

void serial_setup() {
    UART_STATUS = 0;
    UART_REGISTER(UBRR, ) = F_CPU / 16 / 250000 - 1;
    // 8 data bits, no parity, 1 stop bit.
    UART_REGISTER(UCSR, C) = 0x06;
    // Bits of all USARTs of the family: receive interrupt, receiver, transmitter.
    UART_CONTROL = _BV(7) | _BV(4) | _BV(3);
}

void serial_step() {}

bool serial_wants_reset() { return false; }

uint8_t serial_room() { return outgoing.room(); }

void serial_write(const char *bytes, uint8_t length) {
    for (uint8_t i = 0; i < length; i++)
        outgoing.put(static_cast<uint8_t>(bytes[i]));
    UART_CONTROL |= _BV(5);
}

ISR(UART_RECEIVED_vect) {
    const uint8_t status = UART_STATUS;
    const uint8_t byte = UART_DATA;
    constexpr uint8_t framing_error = _BV(4);
    constexpr uint8_t data_overrun = _BV(3);
    if (status & data_overrun)
        received_lost();
    // Half a byte must not pass for an echo.
    if (status & framing_error)
        received_lost();
    else
        received(byte);
}

ISR(UART_EMPTY_vect) {
    uint8_t byte;
    if (outgoing.take(byte))
        UART_DATA = byte;
    else
        UART_CONTROL &= static_cast<uint8_t>(~_BV(5));
}

#endif
