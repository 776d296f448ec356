#include "serial_bridge.h"
#include <algorithm>
#include <cstdio>

namespace {

constexpr char echo_byte = 0x06;
// What a controller holds: simavr's queue of 64 would hide losses that silicon has.
constexpr unsigned silicon_depth = 2;

}

SerialBridge::SerialBridge(Machine &machine, PseudoTerminal &port, const FaultOptions &faults, std::uint64_t seed,
                           const volatile sig_atomic_t &stop)
    : machine_(machine), port_(port), stop_(stop),
      rig_faults_(faults.garble_share, faults.drop_share, seed + 1),
      host_faults_(faults.garble_host_share, faults.drop_share, seed + 2), on_feed_([this] { feed(); }) {
    avr_irq_register_notify(avr_io_getirq(machine.avr(), AVR_IOCTL_UART_GETIRQ(machine.board().uart), UART_IRQ_OUTPUT),
                            on_output, this);
}

void SerialBridge::take_from_host() {
    for (const char byte : port_.read()) {
        if (byte == echo_byte) {
            echoes_++;
            to_rig_.push_back(byte);
            continue;
        }
        host_line_ += byte;
        if (byte != '\n')
            continue;
        host_faults_.damage(host_line_);
        to_rig_.insert(to_rig_.end(), host_line_.begin(), host_line_.end());
        host_line_.clear();
    }
    // simavr holds the first byte of a burst for the time that it takes on the line.
    if (!feeding_ && !to_rig_.empty())
        feed_next_at(machine_.now());
}

void SerialBridge::host_gone() {
    host_line_.clear();
    if (port_.is_open())
        port_.discard_unread();
}

void SerialBridge::reset() {
    rig_line_.clear();
    transmitter_free_at_ = 0;
    feeding_ = false;
    if (!to_rig_.empty())
        feed_next_at(machine_.now());
}

void SerialBridge::print_summary() const {
    const auto number = [](std::uint64_t value) { return static_cast<unsigned long long>(value); };
    std::fprintf(stderr, "from the rig: %llu bytes, %llu lines (%llu garbled, %llu with a byte lost)\n",
                 number(bytes_from_rig_), number(lines_from_rig_), number(rig_faults_.garbled()),
                 number(rig_faults_.dropped()));
    std::fprintf(stderr, "to the rig: %llu bytes (%llu lines garbled, %llu with a byte lost)\n", number(bytes_to_rig_),
                 number(host_faults_.garbled()), number(host_faults_.dropped()));
    std::fprintf(stderr, "overruns that silicon would have had: %llu receiving, %llu transmitting\n",
                 number(receive_overruns_), number(transmit_overruns_));
}

void SerialBridge::on_output(avr_irq_t *, std::uint32_t value, void *bridge) {
    static_cast<SerialBridge *>(bridge)->output(static_cast<char>(value));
}

void SerialBridge::output(char byte) {
    bytes_from_rig_++;
    const std::uint64_t now = machine_.now();
    if (transmitter_free_at_ > now + (silicon_depth - 1) * byte_cycles())
        transmit_overruns_++;
    transmitter_free_at_ = std::max(transmitter_free_at_, now) + byte_cycles();

    rig_line_ += byte;
    if (byte != '\n')
        return;
    lines_from_rig_++;
    rig_faults_.damage(rig_line_);
    if (port_.is_open())
        port_.write(rig_line_, stop_);
    rig_line_.clear();
}

void SerialBridge::feed() {
    feeding_ = false;
    if (to_rig_.empty())
        return;
    const char byte = to_rig_.front();
    to_rig_.pop_front();
    bytes_to_rig_++;
    avr_raise_irq(avr_io_getirq(machine_.avr(), AVR_IOCTL_UART_GETIRQ(machine_.board().uart), UART_IRQ_INPUT),
                  static_cast<std::uint8_t>(byte));
    const auto &queue = machine_.uart()->input;
    if (((queue.write - queue.read) & (uart_fifo_fifo_size - 1)) > static_cast<int>(silicon_depth))
        receive_overruns_++;
    if (!to_rig_.empty())
        feed_next_at(machine_.now() + byte_cycles());
}

void SerialBridge::feed_next_at(std::uint64_t instant) {
    feeding_ = true;
    machine_.at(instant, &on_feed_);
}

// 0 until the firmware has set the rate.
std::uint64_t SerialBridge::byte_cycles() const {
    return std::max<std::uint64_t>(machine_.uart()->cycles_per_byte, 1);
}
