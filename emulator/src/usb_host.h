#pragma once
#include "machine.h"
#include <array>
#include <vector>

// A computer at the controller's own USB port, packet by packet: enumerates what attaches itself, and fetches a report
// every millisecond. simavr knows no frames and no wire times.
class UsbHost {
public:
    // Told whether button 1 is down, whenever that has changed.
    UsbHost(Machine &machine, std::function<void(bool)> on_button);
    // Every 250 us.
    void tick();
    void reset();
    void print_summary() const;

private:
    using Bytes = std::vector<std::uint8_t>;
    enum class Stage { detached, bus_reset, setup, data_or_status, configured, failed };

    bool attached() const;
    void proceed();
    void send_setup();
    void take_answer();
    void fetch_report();
    int transfer(std::uint32_t control, std::uint8_t pipe, Bytes &bytes);

    Machine &machine_;
    std::function<void(bool)> on_button_;
    Stage stage_ = Stage::detached;
    unsigned quarters_ = 0;
    std::size_t request_ = 0;
    std::vector<Bytes> answers_;
    bool button_ = false;
    std::uint64_t reports_ = 0;
};
