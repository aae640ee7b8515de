use crate::{
    fastening::{ScrewThread, ThreadForm},
    material::Thread,
};

/// The thread of a row, for formulas.
#[must_use]
pub fn screw_thread(thread: &Thread) -> ScrewThread {
    let form = if thread.family.starts_with(UNIFIED) { ThreadForm::Unified } else { ThreadForm::Metric };
    ScrewThread { major: thread.major.value, pitch: thread.pitch.value, form }
}

/// How the families of Unified threads begin: coarse and fine.
const UNIFIED: &str = "unified";
