#include "outside_program.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>
#include <unistd.h>

#include "core/units/number_text.h"

namespace crosstick::geodesy {

std::vector<std::string> answersOf(const std::string& command, const std::vector<std::string>& lines) {
    std::string name = testing::TempDir() + "asked-XXXXXX";
    const int file = mkstemp(name.data());
    if (file < 0) {
        return {"no temporary file"};
    }
    close(file);
    {
        std::ofstream out(name);
        for (const std::string& line : lines) {
            out << line << '\n';
        }
    }
    std::vector<std::string> answers;
    FILE* pipe = popen((command + " < " + name).c_str(), "r");
    if (pipe == nullptr) {
        return {"cannot run " + command};
    }
    std::string text;
    for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) {
        text += static_cast<char>(c);
    }
    const int status = pclose(pipe);
    std::filesystem::remove(name);
    if (status != 0) {
        return {command + " failed: " + text};
    }
    std::istringstream all(text);
    for (std::string line; std::getline(all, line);) {
        answers.push_back(line);
    }
    return answers;
}

std::vector<double> numbersIn(const std::string& line) {
    std::vector<double> numbers;
    std::istringstream words(line);
    for (std::string word; words >> word;) {
        if (const auto number = parseNumber(word)) {
            numbers.push_back(*number);
        }
    }
    return numbers;
}

}  // namespace crosstick::geodesy
