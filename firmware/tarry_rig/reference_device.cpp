#include "reference_device.h"

#if defined(__AVR_ATmega32U4__) && !defined(ARDUINO)

#include "board.h"
#include "usb_requests.h"
#include "wake.h"
#include <avr/interrupt.h>
#include <util/atomic.h>

// A report is put into the endpoint's only bank when the button changes, and never else. So the bank is empty at a press,
// and the report that the computer fetches next tells of it; a bank refilled after every fetch would hold the old state
// for one frame more.

static constexpr uint8_t single_bank_of_64 = 0x32;
static constexpr uint8_t single_bank_of_8 = 0x02;
static constexpr uint8_t control_type = 0x00;
static constexpr uint8_t interrupt_in_type = 0xc1;

static UsbState state;
static bool on_the_bus;
static bool report_waits;
static uint8_t new_address;

namespace {

// The endpoint's registers stand behind a number that interrupts use too.
class SelectedEndpoint {
public:
    explicit SelectedEndpoint(uint8_t number) : before_(UENUM) { UENUM = number; }
    ~SelectedEndpoint() { UENUM = before_; }
    SelectedEndpoint(const SelectedEndpoint &) = delete;
    SelectedEndpoint &operator=(const SelectedEndpoint &) = delete;

private:
    uint8_t before_;
};

}

static void acknowledge(uint8_t flags) { UEINTX = static_cast<uint8_t>(~flags); }

static void expect_requests() { UEIENX = _BV(RXSTPE); }

static void open_control_endpoint() {
    UECONX = _BV(EPEN);
    UECFG0X = control_type;
    UECFG1X = single_bank_of_64;
    expect_requests();
}

static void open_report_endpoint() {
    UERST = _BV(report_endpoint);
    UERST = 0;
    UECONX = _BV(EPEN);
    UECFG0X = interrupt_in_type;
    UECFG1X = single_bank_of_8;
}

// The report endpoint is selected and interrupts are off.
static void send_report() {
    if (!(UEINTX & _BV(TXINI))) {
        report_waits = true;
        UEIENX = _BV(TXINE);
        return;
    }
    report_waits = false;
    UEIENX = 0;
    UEDATX = state.report.buttons;
    UEDATX = static_cast<uint8_t>(state.report.x);
    UEDATX = static_cast<uint8_t>(state.report.y);
    // On an IN endpoint the bit of RXOUTI kills the bank when written as one.
    acknowledge(_BV(TXINI) | _BV(NAKINI) | _BV(FIFOCON) | _BV(RXOUTI));
}

void reference_attach(bool attached) {
    on_the_bus = attached;
    state = UsbState();
    report_waits = false;
    new_address = 0;
    if (!attached) {
        UDCON = _BV(DETACH);
        UDIEN = 0;
        USBCON = _BV(FRZCLK);
        PLLCSR = 0;
        return;
    }
    UHWCON = _BV(UVREGE);
    USBCON = _BV(USBE) | _BV(FRZCLK);
#if F_CPU == 16000000
    PLLCSR = _BV(PINDIV) | _BV(PLLE);
#else
    PLLCSR = _BV(PLLE);
#endif
    while (!(PLLCSR & _BV(PLOCK))) {
    }
    USBCON = _BV(USBE) | _BV(OTGPADE);
    UDINT = 0;
    UDIEN = _BV(EORSTE);
    UDCON = 0;
}

bool reference_ready() { return state.configuration != 0; }

void reference_press(bool down) {
    const uint8_t buttons = down ? 1 : 0;
    if (state.report.buttons == buttons)
        return;
    state.report.buttons = buttons;
    if (!reference_ready() || state.halted)
        return;
    SelectedEndpoint selected(report_endpoint);
    send_report();
}

static SetupPacket read_setup() {
    uint8_t bytes[8];
    for (uint8_t &byte : bytes)
        byte = UEDATX;
    const auto word = [&](uint8_t at) { return static_cast<uint16_t>(bytes[at] | bytes[at + 1] << 8); };
    return {bytes[0], bytes[1], word(2), word(4), word(6)};
}

static void configure(uint8_t configuration) {
    state.configuration = configuration;
    state.halted = false;
    SelectedEndpoint selected(report_endpoint);
    if (configuration != 0)
        open_report_endpoint();
    else
        UECONX = 0;
}

static void halt(bool halted) {
    state.halted = halted;
    SelectedEndpoint selected(report_endpoint);
    UECONX = halted ? _BV(EPEN) | _BV(STALLRQ) : _BV(EPEN) | _BV(STALLRQC) | _BV(RSTDT);
}

// The control endpoint is selected and interrupts are off. A request takes some ten microseconds, and none comes in a run.
static void answer_request() {
    const SetupPacket setup = read_setup();
    acknowledge(_BV(RXSTPI));
    const UsbAnswer answer = usb_answer(setup, state);
    switch (answer.kind) {
    case UsbAnswer::Kind::stall:
        UECONX = _BV(EPEN) | _BV(STALLRQ);
        return;
    case UsbAnswer::Kind::data:
        for (uint8_t i = 0; i < answer.data.length; i++)
            UEDATX = answer.data.data[i];
        break;
    case UsbAnswer::Kind::address:
        // It holds from the end of this request on.
        UDADDR = answer.number;
        new_address = answer.number;
        break;
    case UsbAnswer::Kind::configuration: configure(answer.number); break;
    case UsbAnswer::Kind::halt: halt(answer.number != 0); break;
    case UsbAnswer::Kind::done: break;
    }
    acknowledge(_BV(TXINI));
}

void reference_step() {
    // Without its clock the USB controller has no registers to speak of.
    if (!on_the_bus)
        return;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        SelectedEndpoint selected(0);
        if (UEINTX & _BV(RXSTPI))
            answer_request();
        else if (UEINTX & _BV(RXOUTI))
            acknowledge(_BV(RXOUTI));
        if (new_address != 0 && (UEINTX & _BV(TXINI))) {
            UDADDR = static_cast<uint8_t>(new_address | _BV(ADDEN));
            new_address = 0;
        }
        if (UECONX & _BV(EPEN))
            UEIENX = new_address != 0 ? _BV(RXSTPE) | _BV(TXINE) : _BV(RXSTPE) | _BV(RXOUTE);
    }
}

// The bus was reset: no address, no configuration.
ISR(USB_GEN_vect) {
    const bool reset = UDINT & _BV(EORSTI);
    UDINT = 0;
    if (!reset)
        return;
    state = UsbState();
    report_waits = false;
    new_address = 0;
    SelectedEndpoint selected(0);
    open_control_endpoint();
}

ISR(USB_COM_vect) {
    {
        // Stays raised until the loop has answered.
        SelectedEndpoint selected(0);
        UEIENX = 0;
    }
    if (report_waits) {
        SelectedEndpoint selected(report_endpoint);
        send_report();
    }
    wake();
}

#endif
