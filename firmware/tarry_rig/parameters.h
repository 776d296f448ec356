#pragma once
#include <stdint.h>

enum class Parameter : uint8_t {
    imin, imax, hold, tout, rear, emin, resp, pola, thre, seed, firs, coun, acti, alow, ahig, ramp, refm,
    sint, sref,
};

enum class Setting : uint8_t { done, unknown_key, out_of_range };

// What the host can set, in the units of docs/protocol.md.
class Parameters {
public:
    Parameters();
    uint32_t operator[](Parameter parameter) const { return values_[static_cast<uint8_t>(parameter)]; }
    Setting set(const char *key, uint32_t value);
    // imin may have been raised above imax, the last trial must still have a number, and a ramp must end before the release.
    bool consistent() const;

private:
    uint32_t values_[19];
};
