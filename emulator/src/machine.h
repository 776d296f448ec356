#pragma once
#include "board.h"
#include "simavr_headers.h"
#include <functional>
#include <string>

// The simulated controller with the firmware in it, and a clock that no reset turns back.
class Machine {
public:
    enum class ResetCause : std::uint8_t { power_on = 0x01, pin = 0x02, watchdog = 0x08 };

    // Throws std::runtime_error if the firmware cannot be loaded.
    Machine(const Board &board, const std::string &firmware);
    ~Machine();
    Machine(const Machine &) = delete;
    Machine &operator=(const Machine &) = delete;

    // Runs until the controller's next event; false when the simulation cannot go on.
    bool run();
    void reset(ResetCause cause);

    std::uint64_t now() const { return epoch_ + avr_->cycle; }
    double microseconds(std::uint64_t cycles) const { return static_cast<double>(cycles) * 1e6 / board_.clock_hz; }
    std::uint64_t cycles(double microseconds) const;

    // The rig's own count at `cycle` (0 as long as its timer has not been started).
    std::uint64_t tick_at(std::uint64_t cycle) const { return timer_running_ ? cycle - timer_zero_ : 0; }

    // `call` at an instant of now(), once, in the middle of a run; one instant a caller. Survives resets.
    void at(std::uint64_t instant, std::function<void()> *call);
    // Called after every reset, before the first instruction.
    std::function<void()> after_reset;
    // Called every 250 us of virtual time: a sleeping core jumps to the next timer, however far that is.
    std::function<void()> tick;
    std::uint64_t resets() const { return resets_; }

    avr_t *avr() { return avr_; }
    const Board &board() const { return board_; }
    avr_uart_t *uart() { return uart_; }

private:
    static avr_cycle_count_t on_tick(avr_t *avr, avr_cycle_count_t when, void *machine);
    static avr_cycle_count_t on_call(avr_t *avr, avr_cycle_count_t when, void *call);
    static void on_reset(avr_t *avr);
    void recover_from_reset();
    void watch_timer();

    Board board_;
    avr_t *avr_;
    avr_uart_t *uart_ = nullptr;
    avr_timer_t *timer_ = nullptr;
    std::uint64_t epoch_ = 0;
    std::uint64_t cycle_before_reset_ = 0;
    bool was_reset_ = false;
    std::uint64_t resets_ = 0;
    bool timer_running_ = false;
    std::uint64_t timer_zero_ = 0;
};
