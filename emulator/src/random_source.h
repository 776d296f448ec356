#pragma once
#include <cmath>
#include <cstdint>
#include <random>

// The engine's output is fixed by the C++ standard; the library's distributions are not, so they are written here.
class RandomSource {
public:
    explicit RandomSource(std::uint64_t seed) : engine_(seed) {}

    // [0, 1)
    double uniform() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
    bool chance(double share) { return uniform() < share; }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(uniform() * static_cast<double>(count)); }

    // Standard normal, by Box and Muller's transform.
    double normal() {
        const double radius = std::sqrt(-2 * std::log(1 - uniform()));
        return radius * std::cos(2 * 3.14159265358979323846 * uniform());
    }

private:
    std::mt19937_64 engine_;
};
