#pragma once
#include <cstdint>
#include <fstream>
#include <string>

// What was injected, press by press, for comparison with what the rig reports.
class TruthLog {
public:
    // An empty path keeps nothing. Throws std::runtime_error if the file cannot be written.
    explicit TruthLog(const std::string &path);
    // press_tick is the rig's own count at the press, were it perfect; a miss has no latency.
    void press(std::uint64_t press_cycle, const double *latency_us, const std::string &kind, std::uint64_t press_tick);

private:
    std::ofstream file_;
};
