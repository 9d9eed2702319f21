#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/units/result.h"

namespace crosstick::app {

/// The words for one fault. {key} stands for an argument; the sentence says what, where, and what to do.
struct Words {
    std::string_view fault;
    std::string_view text;
};

/// One clear line, without a full stop missing and without codes.
[[nodiscard]] std::string words(const Error& error);
[[nodiscard]] bool hasWords(FaultId fault);

/// One table a folder.
[[nodiscard]] std::span<const Words> unitsWords();
[[nodiscard]] std::span<const Words> geodesyWords();
[[nodiscard]] std::span<const Words> skyWords();
[[nodiscard]] std::span<const Words> planWords();
[[nodiscard]] std::span<const Words> workerWords();
[[nodiscard]] std::span<const Words> sheetsWords();
[[nodiscard]] std::span<const Words> registrationWords();
[[nodiscard]] std::span<const Words> movementWords();
[[nodiscard]] std::span<const Words> terrainWords();
[[nodiscard]] std::span<const Words> draftingWords();
[[nodiscard]] std::span<const Words> filmWords();
[[nodiscard]] std::span<const Words> filesWords();
[[nodiscard]] std::span<const Words> symbolsWords();
[[nodiscard]] std::span<const Words> pressWords();
[[nodiscard]] std::span<const Words> tableWords();
[[nodiscard]] std::span<const Words> demoWords();
[[nodiscard]] std::span<const Words> windowWords();
[[nodiscard]] std::span<const Words> appWords();

}  // namespace crosstick::app
