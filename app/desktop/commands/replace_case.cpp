#include "app/desktop/commands/replace_case.h"

#include <utility>

namespace drapewright::desktop {

ReplaceCase::ReplaceCase(const QString& text, CasePtr before, CasePtr after, MergeKey key,
                         std::function<void(CasePtr)> put)
    : QUndoCommand(text),
      before_(std::move(before)),
      after_(std::move(after)),
      key_(std::move(key)),
      put_(std::move(put)) {}

bool ReplaceCase::mergeWith(const QUndoCommand* next) {
  const auto* later = dynamic_cast<const ReplaceCase*>(next);
  if (later == nullptr || !(later->key_ == key_)) return false;
  after_ = later->after_;
  setObsolete(*before_ == *after_);  // typed and typed back: nothing to undo
  return true;
}

}  // namespace drapewright::desktop
