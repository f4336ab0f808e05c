#include "core/casefile/json_document.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <random>

#include "core/casefile/json_fault.h"

namespace drapewright::casefile {
namespace {

TEST(JsonDocument, FindsWhatAPointerNames) {
  const std::string text = R"({"a": [10, {"b/c": "d", "~e": [true, null]}], "f": {}})";
  const JsonDocument document(text, "x");
  EXPECT_EQ(document.nearest("").kind(), JsonKind::object);
  EXPECT_EQ(document.nearest("/a/0").number(), 10);
  EXPECT_EQ(document.nearest("/a/1/b~1c").text(), "d");
  EXPECT_TRUE(document.nearest("/a/1/~0e/0").boolean());
  EXPECT_EQ(document.nearest("/a/1/~0e/1").kind(), JsonKind::null);
  EXPECT_EQ(document.nearest("/a/1/~0e/1").pointer(), "/a/1/~0e/1");
  EXPECT_EQ(document.nearest("/a/7/none").pointer(), "/a");
  EXPECT_EQ(document.nearest("/f").members().size(), 0u);
}

TEST(JsonDocument, KnowsWhereEveryValueStands) {
  const std::string text = "{\n  \"\xC3\xA9\": [1,\n    {\"x\":-2.5e1}]}";
  const JsonDocument document(text, "x");
  const auto place = document.nearest("/\xC3\xA9/1/x").place();
  EXPECT_EQ(place.text->line, 3);
  EXPECT_EQ(place.text->column, 10);
  EXPECT_EQ(document.nearest("/\xC3\xA9/1/x").raw(), "-2.5e1");
  EXPECT_EQ(document.nearest("/\xC3\xA9").place().text->column, 8);
}

// The value itself, rebuilt from the index, against the library's own reading.
nlohmann::json rebuilt(const JsonValue& value) {
  nlohmann::json out = nlohmann::json::parse(value.kind() == JsonKind::object ? "{}"
                                             : value.kind() == JsonKind::list ? "[]"
                                                                              : value.raw());
  for (const auto& item : value.items()) out.push_back(rebuilt(item));
  for (const auto& member : value.members()) out[member.name] = rebuilt(member.value);
  return out;
}

nlohmann::json random_json(std::mt19937& random, int depth) {
  const auto pick = [&](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
  switch (pick(depth > 0 ? 6 : 4)) {
    case 0:
      return nullptr;
    case 1:
      return pick(1) == 1;
    case 2:
      return pick(2000) - 1000;
    case 3:
      return std::uniform_real_distribution<double>(-1e3, 1e3)(random);
    case 4:
      return std::string("a\"\\\n,:]}\xE2\x82\xAC").substr(0, static_cast<std::size_t>(pick(8)));
    case 5: {
      auto list = nlohmann::json::array();
      for (int i = pick(4); i > 0; --i) list.push_back(random_json(random, depth - 1));
      return list;
    }
    default: {
      auto object = nlohmann::json::object();
      for (int i = pick(4); i > 0; --i) {
        object["n" + std::to_string(pick(99))] = random_json(random, depth - 1);
      }
      return object;
    }
  }
}

TEST(JsonDocument, ReadsWhatTheLibraryReads) {
  std::mt19937 random(11);
  for (int round = 0; round < 500; ++round) {
    const nlohmann::json value = random_json(random, 5);
    for (const int indent : {-1, 0, 3}) {
      const std::string text = value.dump(indent);
      EXPECT_EQ(rebuilt(JsonDocument(text, "x").root()), value) << text;
    }
  }
}

TEST(JsonDocument, AnyCutOrChangedByteIsReadOrRefused) {
  std::mt19937 random(13);
  for (int round = 0; round < 300; ++round) {
    const std::string sound = random_json(random, 4).dump(round % 3 - 1);
    for (std::size_t i = 0; i < sound.size(); ++i) {
      std::string changed = sound;
      changed[i] = static_cast<char>(random());
      for (const auto& text : {sound.substr(0, i), changed}) {
        const bool accepted = nlohmann::json::accept(text);
        try {
          const JsonDocument document(text, "x");
          EXPECT_TRUE(accepted) << text;
        } catch (const InputError& fault) {
          EXPECT_NE(fault.problem(), "");
          EXPECT_NE(fault.expected(), "") << fault.what();
          EXPECT_EQ(std::string(fault.what()).find('\n'), std::string::npos);
        }
      }
    }
  }
}

// RFC 3629, section 4.
TEST(Utf8, IsToldFromWhatIsNot) {
  constexpr auto sound = std::string_view::npos;
  EXPECT_EQ(find_bad_utf8("plain \xC3\xA9 \xE2\x82\xAC \xF0\x9F\x99\x82"), sound);
  EXPECT_EQ(find_bad_utf8("a\x80"), 1u);             // a continuation alone
  EXPECT_EQ(find_bad_utf8("\xC0\xAF"), 0u);          // overlong
  EXPECT_EQ(find_bad_utf8("\xE0\x80\x80"), 0u);      // overlong
  EXPECT_EQ(find_bad_utf8("\xED\xA0\x80"), 0u);      // half a surrogate pair
  EXPECT_EQ(find_bad_utf8("\xF4\x90\x80\x80"), 0u);  // beyond U+10FFFF
  EXPECT_EQ(find_bad_utf8("ab\xE2\x82"), 2u);        // cut off
}

TEST(InQuotes, StaysShortAndOnOneLine) {
  EXPECT_EQ(in_quotes("a\nb"), "\"a\\u000ab\"");
  EXPECT_EQ(in_quotes(std::string(50, 'x')), "\"" + std::string(40, 'x') + "...\"");
}

}  // namespace
}  // namespace drapewright::casefile
