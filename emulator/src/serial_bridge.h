#pragma once
#include "line_faults.h"
#include "machine.h"
#include "options.h"
#include "pseudo_terminal.h"
#include <deque>

// Carries bytes between the controller's UART and the port, at the UART's pace, with the cable's faults.
class SerialBridge {
public:
    SerialBridge(Machine &machine, PseudoTerminal &port, const FaultOptions &faults, std::uint64_t seed,
                 const volatile sig_atomic_t &stop);

    // Takes what the host has sent.
    void take_from_host();
    void host_gone();
    std::uint64_t echoes() const { return echoes_; }
    // Bytes under way are lost; the host's are kept for the UART if the rig still has its power.
    void reset();
    bool rig_has_spoken() const { return lines_from_rig_ > 1; }
    void print_summary() const;

private:
    static void on_output(avr_irq_t *irq, std::uint32_t value, void *bridge);
    void output(char byte);
    void feed();
    void feed_next_at(std::uint64_t instant);
    std::uint64_t byte_cycles() const;

    Machine &machine_;
    PseudoTerminal &port_;
    const volatile sig_atomic_t &stop_;
    LineFaults rig_faults_;
    LineFaults host_faults_;
    std::string rig_line_;
    std::string host_line_;
    std::deque<char> to_rig_;
    bool feeding_ = false;
    std::uint64_t transmitter_free_at_ = 0;
    std::function<void()> on_feed_;

    std::uint64_t bytes_from_rig_ = 0;
    std::uint64_t bytes_to_rig_ = 0;
    std::uint64_t lines_from_rig_ = 0;
    std::uint64_t echoes_ = 0;
    std::uint64_t receive_overruns_ = 0;
    std::uint64_t transmit_overruns_ = 0;
};
