#include "truth_log.h"
#include <iomanip>
#include <stdexcept>

TruthLog::TruthLog(const std::string &path) {
    if (path.empty())
        return;
    file_.open(path);
    if (!file_)
        throw std::runtime_error(path + " cannot be written");
    file_ << "press_cycle,true_latency_us,kind,press_tick\n" << std::fixed << std::setprecision(4);
}

void TruthLog::press(std::uint64_t press_cycle, const double *latency_us, const std::string &kind,
                     std::uint64_t press_tick) {
    if (!file_.is_open())
        return;
    file_ << press_cycle << ',';
    if (latency_us)
        file_ << *latency_us;
    // One whole line at a time, so that a reader never meets half a press.
    file_ << ',' << kind << ',' << press_tick << std::endl;
}
