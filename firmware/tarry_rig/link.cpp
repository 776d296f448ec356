#include "link.h"
#include "axis.h"
#include "board.h"
#include "boot_counter.h"
#include "clock.h"
#include "command.h"
#include "line_buffer.h"
#include "readings.h"
#include "received.h"
#include "reference_device.h"
#include "report.h"
#include "reset_cause.h"
#include "run.h"
#include "serial.h"

namespace {

uint16_t boot;
Parameters parameters;
LineBuffer line;
uint16_t bad_frames;
uint16_t level_set;
Tick level_taken;
uint32_t next_beat;

// What the last command was, so that its repeat is known.
char last_kind;
uint8_t last_n;

uint32_t next_to_send = 1;
uint32_t resend_from;
uint8_t resend_left;
bool repeat_newest;

bool room() { return serial_room() > frame_limit; }
void send(const FrameWriter &frame) { serial_write(frame.text(), frame.length()); }
void accept(const Command &command) { send(done_frame(boot, command.n, command.kind)); }

void refuse(const Command &command, const char *reason) {
    send(refusal_frame(boot, command.n, command.kind, reason));
}

void greet() { send(greeting_frame(boot, {reset_cause(), ticks_per_second, BOARD_NAME, "0.1.0"})); }

// As the heartbeat says it.
char state() { return readings_busy() ? 's' : run_state(); }

void set_parameter(const Command &command) {
    if (state() != 'i') {
        refuse(command, "state");
        return;
    }
    const uint32_t reference_before = parameters[Parameter::refm];
    Setting setting = parameters.set(command.key, command.value);
    const uint32_t reference = parameters[Parameter::refm];
    if (reference != 0 && !reference_possible) {
        parameters.set("refm", 0);
        setting = Setting::out_of_range;
    } else if (reference != reference_before) {
        reference_attach(reference != 0);
    }
    switch (setting) {
    case Setting::done: accept(command); break;
    case Setting::unknown_key: refuse(command, "key"); break;
    case Setting::out_of_range: refuse(command, "range"); break;
    }
}

void begin_run(const Command &command, bool repeated) {
    if (repeated) {
        accept(command);
    } else if (state() != 'i' || run_ending()) {
        refuse(command, "state");
    } else if (parameters[Parameter::refm] != 0 && !reference_ready()) {
        // No computer has configured the gamepad yet: its presses would go nowhere.
        refuse(command, "state");
    } else if (!parameters.consistent()) {
        refuse(command, "range");
    } else {
        accept(command);
        resend_left = 0;
        repeat_newest = false;
        next_to_send = parameters[Parameter::firs];
        run_begin(parameters);
    }
}

void begin_stream(const Command &command, bool repeated) {
    if (!repeated && (state() != 'i' || run_ending())) {
        refuse(command, "state");
        return;
    }
    accept(command);
    if (!repeated)
        readings_begin(parameters[Parameter::sint] * ticks_per_microsecond, parameters[Parameter::sref] != 0);
}

void set_level(const Command &command, bool repeated) {
    if (run_state() != 'i') {
        refuse(command, "state");
        return;
    }
    if (!repeated) {
        level_set = static_cast<uint16_t>(command.value);
        level_taken = axis_level(level_set);
    }
    send(level_frame(boot, command.n, level_set, level_taken));
}

void resend(const Command &command) {
    if (command.value == 0 || command.count == 0) {
        refuse(command, "range");
    } else if (!run_trials().holds(command.value, command.count)) {
        refuse(command, "gone");
    } else {
        accept(command);
        resend_from = command.value;
        resend_left = command.count;
    }
}

void obey(const Command &command) {
    if (command.kind == 'k') {
        run_trials().acknowledge(command.value);
        return;
    }
    const bool repeated = command.kind == last_kind && command.n == last_n;
    switch (command.kind) {
    case 'h': greet(); break;
    case 'c': set_parameter(command); break;
    case 'g': begin_run(command, repeated); break;
    case 'x': run_stop(); readings_stop(); accept(command); break;
    case 's': begin_stream(command, repeated); break;
    case 'v': set_level(command, repeated); break;
    case 'p':
        send(ping_frame(boot, command.n, static_cast<uint16_t>(command.value), received_ping_tick()));
        break;
    case 'r': resend(command); break;
    }
    last_kind = command.kind;
    last_n = command.n;
}

void read_line() {
    if (line.empty())
        return;
    Command command;
    const Reading reading = line.too_long() ? Reading::damaged : read_command(line.text(), line.length(), command);
    switch (reading) {
    case Reading::command: obey(command); break;
    case Reading::unknown_kind: refuse(command, "kind"); break;
    case Reading::wrong_form: refuse(command, "form"); break;
    case Reading::damaged:
        if (bad_frames != 0xffff)
            bad_frames++;
        break;
    }
}

void beat() {
    const Tick now = clock_now();
    if (!reached(now.low(), next_beat))
        return;
    next_beat += ticks_per_second;
    send(heartbeat_frame(boot, {now, run_trials().last(), state(), run_trials().unacknowledged(), bad_frames,
                                received_lost_count()}));
}

void report() {
    if (resend_left != 0 && room()) {
        send(trial_frame(boot, resend_from, run_trials().at(resend_from)));
        resend_from++;
        resend_left--;
    }
    while (next_to_send - 1 != run_trials().last() && room()) {
        send(trial_frame(boot, next_to_send, run_trials().at(next_to_send)));
        next_to_send++;
        repeat_newest = true;
    }
    // Where nothing newer waits the trial is said twice: a line that is garbled in the instant before a restart could
    // not be asked for any more.
    if (repeat_newest && next_to_send - 1 == run_trials().last() && room()) {
        send(trial_frame(boot, next_to_send - 1, run_trials().at(next_to_send - 1)));
        repeat_newest = false;
    }
    if (run_ending() && resend_left == 0 && next_to_send - 1 == run_trials().last() && room()) {
        send(run_over_frame(boot, run_counts(), run_ending()));
        run_ending_reported();
    }
    while (readings_batches().ready() && room()) {
        send(readings_frame(boot, readings_batches().oldest()));
        readings_batches().drop_oldest();
    }
    if (readings_end_due() && room()) {
        send(stream_over_frame(boot, readings_batches().total(), readings_batches().lost()));
        readings_end_told();
    }
    if (room())
        beat();
}

}

void link_setup() {
    boot = boot_counter_raise();
    // What stood on the line before the reset must not be glued to the first frame.
    serial_write("\n", 1);
    greet();
    next_beat = clock_now().low() + ticks_per_second;
}

void link_step() {
    serial_step();
    uint8_t byte;
    while (room() && received_take(byte))
        if (line.push(byte))
            read_line();
    report();
    serial_step();
}
