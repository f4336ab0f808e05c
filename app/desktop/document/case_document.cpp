#include "app/desktop/document/case_document.h"

#include <filesystem>

#include "app/wording/spoken.h"
#include "core/casefile/case_json.h"

namespace drapewright::desktop {
namespace {

std::filesystem::path file_path(const QString& path) {
  return std::filesystem::path(path.toStdU16String());
}

}  // namespace

wound::Case empty_case(const QString& today) {
  wound::Case value;
  value.label = say("Case of {1}", {today.toStdString()});
  value.assessments.push_back({.date = today.toStdString()});
  return value;
}

CaseDocument::CaseDocument(const QString& today, QObject* parent)
    : QObject(parent), value_(std::make_shared<wound::Case>(empty_case(today))) {}

void CaseDocument::change(const QString& text, wound::Case next, const QString& field) {
  if (next == *value_) return;
  undo_stack_.push(new ReplaceCase(text, value_, std::make_shared<wound::Case>(std::move(next)),
                                   {field, stretch_},
                                   [this](CasePtr value) { put(std::move(value)); }));
}

void CaseDocument::put(CasePtr value) {
  value_ = std::move(value);
  emit case_changed();
}

void CaseDocument::replace(wound::Case value, const QString& path) {
  value_ = std::make_shared<wound::Case>(std::move(value));
  path_ = path;
  undo_stack_.clear();
  emit path_changed();
  emit case_replaced();
  emit case_changed();
}

void CaseDocument::start_new(const QString& today) { replace(empty_case(today), {}); }

void CaseDocument::start_from(wound::Case value) { replace(std::move(value), {}); }

void CaseDocument::open(wound::Case value, const QString& path) { replace(std::move(value), path); }

void CaseDocument::save_as(const QString& path) {
  wound::check(value());
  casefile::write_case(file_path(path), value());
  path_ = path;
  undo_stack_.setClean();
  emit path_changed();
}

}  // namespace drapewright::desktop
