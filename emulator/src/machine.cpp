#include "machine.h"
#include <cmath>
#include <cstdarg>
#include <cstdio>
#include <cstring>
#include <stdexcept>

namespace {

constexpr double tick_us = 250;
constexpr avr_cycle_count_t run_limit = 1000;
constexpr int mcusr = 0x54;   // data address, register summaries of both controllers

// simavr's reset callback takes no context, and there is one controller.
Machine *the_machine;
void (*chained_reset)(avr_t *);

void keep_stdout_clean(avr_t *, const int level, const char *format, va_list arguments) {
    if (level <= LOG_ERROR)
        std::vfprintf(stderr, format, arguments);
}

void do_not_sleep(avr_t *, avr_cycle_count_t) {}

avr_io_t *find_module(avr_t *avr, const char *kind, char name, char (*name_of)(avr_io_t *)) {
    for (avr_io_t *module = avr->io_port; module; module = module->next)
        if (std::strcmp(module->kind, kind) == 0 && name_of(module) == name)
            return module;
    throw std::runtime_error(std::string("this simavr has no ") + kind + " " + name);
}

}

Machine::Machine(const Board &board, const std::string &firmware) : board_(board) {
    avr_global_logger_set(keep_stdout_clean);
    elf_firmware_t image = {};
    if (elf_read_firmware(firmware.c_str(), &image) != 0 || image.flashsize == 0)
        throw std::runtime_error(firmware + " is not a firmware that can be loaded; build it with `make -C firmware`");
    avr_ = avr_make_mcu_by_name(board.mcu);
    if (!avr_)
        throw std::runtime_error(std::string("this simavr does not know ") + board.mcu);
    avr_init(avr_);
    avr_->frequency = board.clock_hz;
    avr_load_firmware(avr_, &image);
    avr_->frequency = board.clock_hz;
    avr_->vcc = avr_->avcc = avr_->aref = 5000;
    avr_->sleep = do_not_sleep;
    avr_->run_cycle_limit = run_limit;
    avr_->log = LOG_ERROR;
    uart_ = reinterpret_cast<avr_uart_t *>(find_module(avr_, "uart", board.uart, [](avr_io_t *module) {
        return reinterpret_cast<avr_uart_t *>(module)->name;
    }));
    timer_ = reinterpret_cast<avr_timer_t *>(find_module(avr_, "timer", '1', [](avr_io_t *module) {
        return reinterpret_cast<avr_timer_t *>(module)->name;
    }));
    std::uint32_t uart_flags = 0;   // no echo on stdout, no sleeping when polled
    avr_ioctl(avr_, AVR_IOCTL_UART_SET_FLAGS(board.uart), &uart_flags);

    the_machine = this;
    chained_reset = avr_->reset;
    avr_->reset = on_reset;
}

Machine::~Machine() {
    avr_terminate(avr_);
    the_machine = nullptr;
}

bool Machine::run() {
    const int state = avr_run(avr_);
    if (was_reset_)
        recover_from_reset();
    return state != cpu_Done && state != cpu_Crashed;
}

void Machine::reset(ResetCause cause) {
    cycle_before_reset_ = avr_->cycle;
    avr_reset(avr_);
    avr_->data[mcusr] = static_cast<std::uint8_t>(cause);
    recover_from_reset();
}

std::uint64_t Machine::cycles(double microseconds) const {
    return static_cast<std::uint64_t>(std::llround(microseconds * board_.clock_hz / 1e6));
}

void Machine::at(std::uint64_t instant, std::function<void()> *call) {
    const std::uint64_t ahead = instant > now() ? instant - now() : 1;
    avr_cycle_timer_register(avr_, ahead, on_call, call);
}

avr_cycle_count_t Machine::on_tick(avr_t *, avr_cycle_count_t when, void *machine) {
    auto *self = static_cast<Machine *>(machine);
    self->watch_timer();
    if (self->tick)
        self->tick();
    return when + self->cycles(tick_us);
}

avr_cycle_count_t Machine::on_call(avr_t *, avr_cycle_count_t, void *call) {
    (*static_cast<std::function<void()> *>(call))();
    return 0;
}

void Machine::on_reset(avr_t *avr) {
    if (chained_reset)
        chained_reset(avr);
    the_machine->cycle_before_reset_ = avr->cycle;
    the_machine->was_reset_ = true;
}

// A reset wipes all cycle timers, and may set the cycle count back.
void Machine::recover_from_reset() {
    was_reset_ = false;
    resets_++;
    if (avr_->cycle < cycle_before_reset_)
        epoch_ += cycle_before_reset_ - avr_->cycle;
    timer_running_ = false;
    timer_->tov_base = 0;
    // A low pin with an external interrupt is polled every cycle unless told not to; the rig uses none.
    for (std::uint8_t i = 0; i < EXTINT_COUNT; i++)
        avr_extint_set_strict_lvl_trig(avr_, i, 0);
    avr_cycle_timer_register(avr_, cycles(tick_us), on_tick, this);
    if (after_reset)
        after_reset();
}

// The timer wraps for the first time milliseconds after its start, so the first tick still sees where it began.
void Machine::watch_timer() {
    if (timer_running_ || timer_->tov_base == 0 || timer_->tov_cycles != 65536)
        return;
    timer_running_ = true;
    timer_zero_ = epoch_ + timer_->tov_base;
}
