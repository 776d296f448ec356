#include "bench.h"
#include <cmath>
#include <cstdio>
#include <ctime>
#include <thread>

namespace {

constexpr double fault_after_press_us = 1000;
constexpr double shortest_pulse_us = 500;
constexpr std::chrono::seconds echo_patience(20);

}

Bench::Bench(const Options &options, const Board &board, const volatile sig_atomic_t &stop)
    : options_(options), stop_(stop), machine_(board, options.firmware), port_(options.link),
      bridge_(machine_, port_, options.faults, options.seed, stop), device_(options.device, options.seed),
      line_(machine_, options.response, options.active_low), truth_(options.truth), pacing_(options.clock_ppm),
      began_(std::chrono::steady_clock::now()) {
    avr_irq_register_notify(
        avr_io_getirq(machine_.avr(), AVR_IOCTL_IOPORT_GETIRQ(board.press_port), board.press_bit), on_press_pin, this);
    const auto on_input = [this](bool down) { input_changed(down); };
    if (options.input == InputKind::converter)
        converter_ = std::make_unique<ConverterInput>(machine_, options.axis_threshold, on_input);
    if (options.wiper.kind != WiperKind::none)
        wiper_ = std::make_unique<WiperModel>(machine_, options.wiper, options.wiper.kind == WiperKind::converter ? converter_.get() : nullptr);
    if (options.input == InputKind::usb)
        usb_ = std::make_unique<UsbHost>(machine_, on_input);
    if (options.echo_waits)
        line_.on_report = [this] { wait_for_echo(); };
    machine_.tick = [this] { tick(); };
    machine_.after_reset = [this] {
        bridge_.reset();
        line_.apply_again();
        // A controller in reset drives no LED and is off the bus; a converter keeps its level.
        pin_high_ = false;
        if (usb_)
            usb_->reset();
        if (!converter_)
            input_changed(false);
    };
    machine_.reset(Machine::ResetCause::power_on);
}

void Bench::run() {
    // A host that is told the port finds a rig that listens.
    while (!stop_ && !bridge_.rig_has_spoken())
        if (!machine_.run())
            return;
    std::printf("%s\n", port_.path().c_str());
    std::fflush(stdout);
    while (!stop_ && !finished_) {
        if (!machine_.run())
            break;
        // A reset from inside a cycle timer would pull the timers away under the simulator's feet.
        apply_faults();
    }
}

void Bench::print_summary() const {
    const auto number = [](std::uint64_t value) { return static_cast<unsigned long long>(value); };
    const std::chrono::duration<double> wall = std::chrono::steady_clock::now() - began_;
    std::fprintf(stderr, "presses: %llu = %llu responses + %llu late + %llu missed\n", number(presses_),
                 number(responses_), number(late_), number(missed_));
    std::fprintf(stderr, "longest from the press pin to the input: %.3f us\n", machine_.microseconds(longest_to_input_));
    if (converter_)
        converter_->print_summary();
    if (usb_)
        usb_->print_summary();
    if (wiper_)
        wiper_->print_summary();
    bridge_.print_summary();
    std::fprintf(stderr, "resets: %llu; %.3f s of virtual time in %.3f s\n", number(machine_.resets()),
                 machine_.microseconds(machine_.now()) / 1e6, wall.count());
}

void Bench::on_press_pin(avr_irq_t *, std::uint32_t value, void *bench) {
    auto *self = static_cast<Bench *>(bench);
    if ((value & 1) != self->pin_high_)
        self->pin_changed(value & 1);
}

void Bench::pin_changed(bool high) {
    pin_high_ = high;
    if (high)
        pin_rose_at_ = machine_.now();
    if (options_.input == InputKind::contact)
        input_changed(high);
}

void Bench::input_changed(bool down) {
    if (down == input_down_)
        return;
    input_down_ = down;
    if (down)
        pressed();
    else
        released();
}

void Bench::pressed() {
    const std::uint64_t now = machine_.now();
    const DeviceModel::Answer answer = device_.press(machine_.microseconds(now));
    presses_++;
    answered_until_ = now;
    const std::uint64_t to_input = now - pin_rose_at_;
    longest_to_input_ = std::max(longest_to_input_, to_input);
    double latency_us = 0;
    const bool responds = answer.kind != "missed";
    if (responds) {
        const std::uint64_t delay = machine_.cycles(answer.latency_us);
        latency_us = machine_.microseconds(to_input + delay);
        line_.change_at(now + delay, true);
        std::uint64_t rising = now + delay;
        for (const double bounce_us : answer.bounce_us) {
            const std::uint64_t again = now + machine_.cycles(bounce_us);
            line_.change_at(rising + (again - rising) / 2, false);
            line_.change_at(again, true);
            rising = again;
        }
        answered_until_ = rising + machine_.cycles(shortest_pulse_us);
    }
    (answer.kind == "late" ? late_ : responds ? responses_ : missed_)++;
    truth_.press(pin_rose_at_, responds ? &latency_us : nullptr, answer.kind, machine_.tick_at(pin_rose_at_));

    const bool reboots = presses_ == options_.faults.reboot_at_trial;
    const bool unplugs = presses_ == options_.faults.unplug_at_trial;
    if (reboots || unplugs) {
        pending_ = reboots ? Pending::reboot : Pending::unplug;
        pending_at_ = now + machine_.cycles(fault_after_press_us);
    }
}

void Bench::released() {
    line_.change_at(std::max(machine_.now() + machine_.cycles(device_.release_us()), answered_until_), false);
}

void Bench::tick() {
    line_.follow_threshold();
    if (usb_)
        usb_->tick();
    if (port_.is_open()) {
        host_came_or_went(port_.host_present(0));
        bridge_.take_from_host();
    }
    // Alone, the rig keeps to the wall clock: else it would have lived for hours when the host comes.
    if (options_.realtime || !host_present_)
        pace();
    else
        pacing_.restart();
}

void Bench::pace() {
    for (;;) {
        const double ahead = pacing_.ahead(machine_.microseconds(machine_.now()) / 1e6).count();
        if (ahead <= 0 || stop_)
            return;
        const timespec pause = {static_cast<time_t>(ahead), static_cast<long>((ahead - std::floor(ahead)) * 1e9)};
        nanosleep(&pause, nullptr);
    }
}

// Without this the host's own time would be in the latency, multiplied by how much faster than the wall clock the rig runs.
void Bench::wait_for_echo() {
    const auto patience_ends = std::chrono::steady_clock::now() + echo_patience;
    const std::uint64_t before = bridge_.echoes();
    while (!stop_ && bridge_.echoes() == before && port_.host_present(1) &&
           std::chrono::steady_clock::now() < patience_ends)
        bridge_.take_from_host();
}

void Bench::host_came_or_went(bool present) {
    if (present == host_present_)
        return;
    host_present_ = present;
    if (!present) {
        bridge_.host_gone();
        finished_ = options_.exit_on_close;
    } else if (options_.reset_on_open && pending_ == Pending::none) {
        pending_ = Pending::reset;
        pending_at_ = machine_.now();
    }
}

void Bench::apply_faults() {
    if (pending_ != Pending::none && machine_.now() >= pending_at_) {
        const Pending fault = pending_;
        pending_ = Pending::none;
        if (fault == Pending::unplug)
            unplug();
        else
            machine_.reset(fault == Pending::reset ? Machine::ResetCause::pin : Machine::ResetCause::watchdog);
    }
    if (unplugged_)
        stay_unplugged();
}

void Bench::unplug() {
    // What left the rig milliseconds ago has arrived when a cable is pulled, however fast virtual time runs.
    port_.wait_until_read(200);
    port_.close();
    host_present_ = false;
    bridge_.host_gone();
    unplugged_ = true;
    plug_in_at_ = std::chrono::steady_clock::now() +
                  std::chrono::microseconds(std::llround(options_.faults.unplug_for_ms * 1000));
}

void Bench::stay_unplugged() {
    if (options_.faults.unplug_power)
        while (!stop_ && std::chrono::steady_clock::now() < plug_in_at_)
            std::this_thread::sleep_for(std::chrono::milliseconds(1));
    if (stop_ || std::chrono::steady_clock::now() < plug_in_at_)
        return;
    unplugged_ = false;
    port_.open();
    std::printf("%s\n", port_.path().c_str());
    std::fflush(stdout);
    pacing_.restart();
    if (options_.faults.unplug_power)
        machine_.reset(Machine::ResetCause::power_on);
}
