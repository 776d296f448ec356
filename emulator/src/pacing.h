#pragma once
#include <chrono>

// Holds virtual time to the wall clock.
class Pacing {
public:
    explicit Pacing(double clock_ppm) : rate_(1 + clock_ppm * 1e-6) {}

    // Virtual time begins to be counted anew at the next call of `ahead`.
    void restart() { running_ = false; }
    // How far virtual time is ahead of the wall clock.
    std::chrono::duration<double> ahead(double virtual_seconds) {
        const auto wall = std::chrono::steady_clock::now();
        if (!running_) {
            running_ = true;
            wall_begin_ = wall;
            virtual_begin_ = virtual_seconds;
        }
        const std::chrono::duration<double> due((virtual_seconds - virtual_begin_) / rate_);
        return due - (wall - wall_begin_);
    }

private:
    double rate_;
    bool running_ = false;
    std::chrono::steady_clock::time_point wall_begin_;
    double virtual_begin_ = 0;
};
