#include "rig.h"
#include "clock.h"
#include "link.h"
#include "press.h"
#include "reference_device.h"
#include "run.h"
#include "serial.h"
#include "wake.h"
#include <avr/interrupt.h>
#include <avr/sleep.h>
#include <avr/wdt.h>

static void sleep_until_interrupt() {
    set_sleep_mode(SLEEP_MODE_IDLE);
    cli();
    if (!awake()) {
        sleep_enable();
        // The instruction after sei runs before any interrupt, so none can slip in ahead of the sleep.
        sei();
        sleep_cpu();
        sleep_disable();
    }
    sei();
}

static void feed_watchdog() {
    if (serial_wants_reset())
        return;
    // The board IDE's USB code turns the watchdog off whenever a host opens the port.
    if (!(WDTCSR & _BV(WDE)))
        wdt_enable(WDTO_1S);
    wdt_reset();
}

void rig_setup() {
    cli();
    press_setup();
    reference_attach(false);
    clock_start();
    serial_setup();
    sei();
    link_setup();
}

void rig_loop() {
    feed_watchdog();
    wake_handled();
    run_step();
    reference_step();
    link_step();
    // A command or an acknowledgement just read can change what comes next.
    run_step();
    sleep_until_interrupt();
}
