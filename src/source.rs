//! Published works and how well we know what they say.
//!
//! A formula cites a [`Work`] by a constant of this module, so that a citation cannot be misspelt: rustdoc links to
//! it, and a missing one breaks the build. The bibliographic text of every key stands in `materials/sources.toml`,
//! once, for formulas and table rows alike; a test holds the two lists together.

/// Key of a published work in `materials/sources.toml`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Work(pub &'static str);

/// How a statement came to us. The report prints it beside every value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Mark {
    /// The text or number was read in a copy of the source.
    Read,
    /// Quoted at second hand: it was read in a transcription of the source, or in a program or a note that quotes it.
    Quoted,
    /// Derived from first principles and checked numerically; the name of the source may be remembered.
    Derived,
    /// From memory: to be compared with the document before anyone leans on it.
    Memory,
    /// Common practice of the trade; no source.
    Practice,
    /// Our own assumption.
    Assumed,
}

impl Mark {
    /// The words used in reports and in the material table.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "read in the source",
            Self::Quoted => "quoted at second hand",
            Self::Derived => "derived and checked",
            Self::Memory => "from memory",
            Self::Practice => "common practice, no source",
            Self::Assumed => "our assumption",
        }
    }
}

/// Where a formula or a limit is published.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Citation {
    /// The work.
    pub work: Work,
    /// Chapter, clause, table or equation in it.
    pub locator: &'static str,
    /// How well we know it.
    pub mark: Mark,
}

macro_rules! works {
    ($($(#[$doc:meta])* $name:ident = $key:literal;)*) => {
        $($(#[$doc])* pub const $name: Work = Work($key);)*
        /// Every work that a formula or a published case cites.
        pub const WORKS: &[Work] = &[$($name),*];
    };
}

works! {
    /// Allen, *Analysis and Design of Structural Sandwich Panels*, 1969.
    ALLEN_1969 = "allen-1969";
    /// Zenkert, *An Introduction to Sandwich Construction*, 1995.
    ZENKERT_1995 = "zenkert-1995";
    /// Jones, *Mechanics of Composite Materials*, 2nd ed., 1999.
    JONES_1999 = "jones-1999";
    /// Reddy, *Mechanics of Laminated Composite Plates and Shells*, 2nd ed., 2004.
    REDDY_2004 = "reddy-2004";
    /// Timoshenko and Woinowsky-Krieger, *Theory of Plates and Shells*, 2nd ed., 1959.
    TIMOSHENKO_1959 = "timoshenko-1959";
    /// Roark's *Formulas for Stress and Strain*, 7th ed.
    ROARK_7 = "roark-7";
    /// Hoff and Mautner, *The Buckling of Sandwich-Type Panels*, 1945.
    HOFF_MAUTNER_1945 = "hoff-mautner-1945";
    /// Hetényi, *Beams on Elastic Foundation*, 1946.
    HETENYI_1946 = "hetenyi-1946";
    /// Lloyd's Register, *Rules and Regulations for the Classification of Special Service Craft*.
    LR_SSC = "lr-ssc";
    /// ISO 12215-5:2008, small craft, hull construction and scantlings, design pressures and stresses.
    ISO_12215_5_2008 = "iso-12215-5-2008";
    /// NAFEMS benchmark R0031, composite tests.
    NAFEMS_R0031 = "nafems-r0031";
    /// Savitsky and Brown, *Procedures for Hydrodynamic Evaluation of Planing Hulls*, 1976.
    SAVITSKY_BROWN_1976 = "savitsky-brown-1976";
    /// IS 456:2000, plain and reinforced concrete, code of practice.
    IS_456_2000 = "is-456-2000";
    /// ASCE 7, minimum design loads for buildings and other structures.
    ASCE_7 = "asce-7";
    /// Bangladesh National Building Code 2020, Part 6, Chapter 2, loads on buildings and structures.
    BNBC_2020 = "bnbc-2020";
    /// 49 CFR Part 393, protection against shifting and falling cargo.
    CFR_49_393 = "cfr-49-393";
    /// EN 1991-1-4, actions on structures, wind.
    EN_1991_1_4 = "en-1991-1-4";
    /// EN 1993-1-8, design of steel structures, joints.
    EN_1993_1_8 = "en-1993-1-8";
    /// EN 1995-1-1, design of timber structures.
    EN_1995_1_1 = "en-1995-1-1";
    /// EN 1990, basis of structural design.
    EN_1990 = "en-1990";
    /// EN 1999-1-1, design of aluminium structures.
    EN_1999_1_1 = "en-1999-1-1";
    /// Tsai and Wu, *A General Theory of Strength for Anisotropic Materials*, 1971.
    TSAI_WU_1971 = "tsai-wu-1971";
    /// Halpin and Kardos, *The Halpin-Tsai Equations: A Review*, 1976.
    HALPIN_KARDOS_1976 = "halpin-kardos-1976";
    /// Schapery, *Thermal Expansion Coefficients of Composite Materials Based on Energy Principles*, 1968.
    SCHAPERY_1968 = "schapery-1968";
    /// Krenchel, *Fibre Reinforcement*, 1964.
    KRENCHEL_1964 = "krenchel-1964";
    /// Ley, Lin and Mbanefo, *Facesheet Wrinkling in Sandwich Structures*, NASA/CR-1999-208994, 1999.
    LEY_1999 = "ley-1999";
    /// Plantema, *Sandwich Construction*, 1966.
    PLANTEMA_1966 = "plantema-1966";
    /// Bažant, *Shear Buckling of Sandwich, Fiber Composite and Lattice Columns*, 2003.
    BAZANT_2003 = "bazant-2003";
    /// DAfStb, *Heft 240*, effective widths of slabs under concentrated loads.
    DAFSTB_240 = "dafstb-240";
    /// Jaramillo, *Deflections and Moments Due to a Concentrated Load on a Cantilever Plate of Infinite Length*, 1950.
    JARAMILLO_1950 = "jaramillo-1950";
    /// International yard and pound agreement, 1959.
    YARD_POUND_1959 = "yard-pound-1959";
    /// Abramowitz and Stegun, *Handbook of Mathematical Functions*, 1964.
    ABRAMOWITZ_STEGUN_1964 = "abramowitz-stegun-1964";
    /// American Bureau of Shipping, *Guide for Building and Classing Yachts*, 2021.
    ABS_YACHTS_2021 = "abs-yachts-2021";
    /// Boresi and Schmidt, *Advanced Mechanics of Materials*, 6th ed., 2003.
    BORESI_SCHMIDT_2003 = "boresi-schmidt-2003";
    /// 46 CFR Part 177, construction and arrangement of small passenger vessels.
    CFR_46_177 = "cfr-46-177";
    /// Huang, *Pavement Analysis and Design*, 2nd ed., 2004.
    HUANG_2004 = "huang-2004";
    /// Kaw, *Mechanics of Composite Materials*, 2nd ed., 2006.
    KAW_2006 = "kaw-2006";
    /// Mallick, *Fiber-Reinforced Composites*, 3rd ed., 2008.
    MALLICK_2008 = "mallick-2008";
    /// Pagano, *Exact Solutions for Rectangular Bidirectional Composites and Sandwich Plates*, 1970.
    PAGANO_1970 = "pagano-1970";
    /// Tsai and Hahn, *Introduction to Composite Materials*, 1980.
    TSAI_HAHN_1980 = "tsai-hahn-1980";
    /// NIST Special Publication 811, *Guide for the Use of the International System of Units*, 2008.
    NIST_SP_811 = "nist-sp-811";
    /// ISO 898-1, mechanical properties of carbon and alloy steel bolts.
    ISO_898_1 = "iso-898-1";
    /// Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, 9th ed., 2011.
    SHIGLEY_9 = "shigley-9";
    /// EN 1993-1-9, design of steel structures, fatigue.
    EN_1993_1_9 = "en-1993-1-9";
    /// FED-STD-H28, screw-thread standards for federal services.
    FED_STD_H28 = "fed-std-h28";
    /// Chapman and others, *Factors Affecting the Pullout Strength of Cancellous Bone Screws*, 1996.
    CHAPMAN_1996 = "chapman-1996";
    /// Forest Products Laboratory, *Wood Handbook*, chapter on fastenings.
    WOOD_HANDBOOK = "wood-handbook";
    /// *National Design Specification for Wood Construction*, 2018.
    NDS_2018 = "nds-2018";
    /// VDI 2230 Part 1, systematic calculation of highly stressed bolted joints.
    VDI_2230 = "vdi-2230";
    /// SAE J429, mechanical and material requirements for externally threaded fasteners.
    SAE_J429 = "sae-j429";
    /// NSTS 08307, criteria for preloaded bolts.
    NSTS_08307 = "nsts-08307";
    /// NASA-STD-5020, requirements for threaded fastening systems in spaceflight hardware.
    NASA_STD_5020 = "nasa-std-5020";
    /// Mandell, *Fatigue Behavior of Fibre-Resin Composites*, 1982.
    MANDELL_1982 = "mandell-1982";
    /// Werren, *Bolt-Bearing Properties of Glass-Fabric-Base Plastic Laminates*, Forest Products Laboratory report 1824, 1951.
    FPL_1824 = "fpl-1824";
    /// Volkersen, *Die Nietkraftverteilung in zugbeanspruchten Nietverbindungen*, 1938.
    VOLKERSEN_1938 = "volkersen-1938";
    /// Derived in this project from equilibrium and linear elasticity.
    DERIVED = "derived";
    /// Assumed in this project, until a test says better.
    ASSUMPTION = "assumption";
}
