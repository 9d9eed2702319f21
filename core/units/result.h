#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <tl/expected.hpp>

namespace crosstick {

/// What went wrong, as an identity: "folder/what". Each folder declares its own in faults.h; the words for it stand in
/// app/wording, where they can be translated. A test fails when one has no words.
struct FaultId {
    std::string_view name;
    friend constexpr bool operator==(FaultId, FaultId) = default;
};

/// One thing that the words will name: a file, a line, a number with its unit named by the key.
struct Argument {
    std::string key;
    std::variant<std::string, double, std::int64_t> value;
};

/// An expected failure (a file, an input, a limit), never a broken invariant. Made with fail().
struct Error {
    FaultId fault;
    std::vector<Argument> arguments;

    [[nodiscard]] Error with(std::string key, std::variant<std::string, double, std::int64_t> value) && {
        arguments.push_back({std::move(key), std::move(value)});
        return std::move(*this);
    }
};

template <class T>
using Result = tl::expected<T, Error>;

/// `return fail(kNoSuchBand, {{"text", std::string(text)}});`
[[nodiscard]] inline tl::unexpected<Error> fail(FaultId fault, std::vector<Argument> arguments = {}) {
    return tl::unexpected<Error>(Error{fault, std::move(arguments)});
}

}  // namespace crosstick
