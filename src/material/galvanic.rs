//! Metals that touch in salt water.

use super::{MaterialTable, Property, schema::kind};
use crate::units::Ratio;

kind! {
    /// A fastener of one family of metal in a part of another.
    Galvanic {
        #[doc = "Family of the fastener's metal."]
        fastener: String => PLAIN,
        #[doc = "Family of the part that it sits in: a metal, or carbon."]
        part: String => PLAIN,
        #[doc = "How bad: none, mild, moderate or severe."]
        severity: String => PLAIN,
        #[doc = "What to do."]
        remedy: String => PLAIN,
        #[doc = "Steps in five electromotive groups from part to fastener; negative where the fastener is the one that corrodes."]
        steps: Property<Ratio> => PLAIN,
    }
}

/// What a couple may be called, mildest first.
pub(crate) const SEVERITIES: [&str; 4] = ["none", "mild", "moderate", "severe"];

impl MaterialTable {
    /// The couple of a fastener and a part, by their families of metal; none where the table names no such couple, as
    /// with parts that do not conduct.
    ///
    /// # Examples
    /// Stainless steel in aluminium is the small cathode in the large anode, aluminium in stainless steel the reverse:
    /// ```
    /// use skinspan::material::MaterialTable;
    /// let table = MaterialTable::built_in().unwrap();
    /// assert_eq!(table.couple("stainless steel", "aluminium").unwrap().severity, "moderate");
    /// assert_eq!(table.couple("aluminium", "stainless steel").unwrap().severity, "severe");
    /// assert!(table.couple("stainless steel", "plywood").is_none());
    /// ```
    #[must_use]
    pub fn couple(&self, fastener: &str, part: &str) -> Option<&Galvanic> {
        self.galvanics().iter().find(|row| row.fastener == fastener && row.part == part)
    }
}
