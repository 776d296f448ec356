#include "response_line.h"
#include <cstdio>

namespace {

constexpr int supply_mv = 5000;
constexpr int bright_mv = 4500;
constexpr int dark_mv = 200;

}

ResponseLine::ResponseLine(Machine &machine, ResponseKind kind, bool active_low)
    : machine_(machine), kind_(kind), active_low_(active_low), on_change_([this] { next_change(); }) {}

void ResponseLine::change_at(std::uint64_t instant, bool active) {
    changes_.emplace(instant, active);
    schedule();
}

void ResponseLine::apply_again() {
    threshold_mv_ = -1;
    if (kind_ == ResponseKind::edge) {
        // simavr passes on changes only.
        active_ = !active_;
        apply();
        active_ = !active_;
    }
    apply();
    schedule();
}

void ResponseLine::follow_threshold() {
    if (kind_ != ResponseKind::light)
        return;
    const int millivolts = supply_mv * (machine_.avr()->data[machine_.board().duty_register] + 1) / 256;
    if (millivolts == threshold_mv_)
        return;
    threshold_mv_ = millivolts;
    avr_raise_irq(avr_io_getirq(machine_.avr(), AVR_IOCTL_ACOMP_GETIRQ, machine_.board().threshold_input),
                  static_cast<std::uint32_t>(millivolts));
}

void ResponseLine::next_change() {
    while (!changes_.empty() && changes_.begin()->first <= machine_.now()) {
        const bool changed = active_ != changes_.begin()->second;
        active_ = changes_.begin()->second;
        changes_.erase(changes_.begin());
        if (kind_ != ResponseKind::echo) {
            apply();
        } else if (changed && active_) {
            std::printf("report %llu\n", static_cast<unsigned long long>(++reports_));
            std::fflush(stdout);
            if (on_report)
                on_report();
        }
    }
    schedule();
}

void ResponseLine::apply() {
    const bool high = active_ != active_low_;
    avr_t *avr = machine_.avr();
    if (kind_ == ResponseKind::edge)
        avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(machine_.board().response_port),
                                    machine_.board().response_bit), high);
    else if (kind_ == ResponseKind::light)
        avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_ACOMP_GETIRQ, ACOMP_IRQ_AIN0),
                      static_cast<std::uint32_t>(high ? bright_mv : dark_mv));
}

void ResponseLine::schedule() {
    if (!changes_.empty())
        machine_.at(changes_.begin()->first, &on_change_);
}
