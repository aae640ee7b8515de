//! The table as the rest of the program asks it.

use super::{
    Adhesive, Alloy, Board, Body, Coat, Conduit, CoreFamily, Fabric, FabricRow, Fastener, Fibre, Filler, Galvanic,
    Insert, Lubrication, Ply, PlyForm, PottedInsert, Resin, Rivet, Screw, SourceText, Stud, TableProblem, Thread,
    UnknownName,
    built_in::TABLES,
    galvanic::SEVERITIES,
    layering::Layers,
    reader::read_contents,
    row::{Kind, Row},
    schema::Rowed,
};

/// Text of one table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TableText<'a> {
    /// Name of the file, for messages and for `Origin::table`.
    pub name: &'a str,
    /// Its text, TOML.
    pub text: &'a str,
}

/// All rows of all tables.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialTable {
    pub(crate) rows: Vec<Row>,
    pub(crate) sources: Vec<SourceText>,
    cores: Vec<CoreFamily>,
    fabrics: Vec<Fabric>,
    pub(crate) plies: Vec<Ply>,
    fibres: Vec<Fibre>,
    resins: Vec<Resin>,
    coats: Vec<Coat>,
    boards: Vec<Board>,
    fillers: Vec<Filler>,
    conduits: Vec<Conduit>,
    alloys: Vec<Alloy>,
    fasteners: Vec<Fastener>,
    threads: Vec<Thread>,
    screws: Vec<Screw>,
    inserts: Vec<Insert>,
    potted_inserts: Vec<PottedInsert>,
    rivets: Vec<Rivet>,
    studs: Vec<Stud>,
    adhesives: Vec<Adhesive>,
    lubrications: Vec<Lubrication>,
    bodies: Vec<Body>,
    galvanics: Vec<Galvanic>,
}

macro_rules! lookups {
    ($($(#[$doc:meta])* $one:ident, $all:ident: $type:ty = $kind:ident;)*) => {$(
        $(#[$doc])*
        ///
        /// # Errors
        /// [`UnknownName`], with the name that was probably meant.
        pub fn $one(&self, id: &str) -> Result<&$type, UnknownName> {
            let unknown = || UnknownName::new(Kind::$kind.word(), id, self.$all.iter().map(|row| row.id.as_str()));
            self.$all.iter().find(|row| row.id == id).ok_or_else(unknown)
        }

        /// All of them, by id.
        #[must_use]
        pub fn $all(&self) -> &[$type] {
            &self.$all
        }
    )*};
}

impl MaterialTable {
    /// The table that comes with the program.
    ///
    /// # Errors
    /// None in a released program; the tests load it.
    pub fn built_in() -> Result<Self, Vec<TableProblem>> {
        Self::layered(&[])
    }

    /// The built-in table with others over it, the last on top.
    ///
    /// A row with the kind and id of an earlier one replaces the fields that it has and leaves the others;
    /// [`Origin::table`](super::Origin::table) says for each value which table won. A new id needs all fields, or
    /// `like = "id"` to take the missing ones from another row.
    ///
    /// # Errors
    /// Everything that is wrong in the texts, each with its place.
    ///
    /// # Examples
    /// ```
    /// use skinspan::material::{MaterialTable, TableText};
    /// let text = r#"
    ///     [[source]]
    ///     key = "our-coupons"
    ///     text = "Our own shear coupons"
    ///     seen = "read"
    ///
    ///     [[core]]
    ///     id = "pvc-foam"
    ///     shear_strength = { points = [["80 kg/m3", "1.02 MPa"]], basis = "measured", source = "our-coupons", mark = "read" }
    /// "#;
    /// let table = MaterialTable::layered(&[TableText { name: "shop.toml", text }]).unwrap();
    /// let core = table.core("pvc-foam").unwrap();
    /// assert_eq!(core.shear_strength.origin.table, "shop.toml");
    /// assert_eq!(core.shear_modulus.origin.table, "built-in core.toml");
    /// ```
    pub fn layered(user: &[TableText<'_>]) -> Result<Self, Vec<TableProblem>> {
        let mut problems = Vec::new();
        let mut layers = Layers::default();
        let built_in = TABLES.iter().map(|&(name, text)| TableText { name, text });
        for table in built_in.chain(user.iter().copied()) {
            layers.add(read_contents(table.name, table.text, &mut problems), &mut problems);
        }
        layers.check(&mut problems);
        let table = Self::assemble(layers, &mut problems);
        if problems.is_empty() { Ok(table) } else { Err(problems) }
    }

    fn assemble(layers: Layers, problems: &mut Vec<TableProblem>) -> Self {
        let rows: Vec<Row> = layers.rows.into_values().collect();
        let fabric_rows: Vec<FabricRow> = build(&rows, Kind::Fabric);
        let mut fabrics = Vec::new();
        for fabric in &fabric_rows {
            match Fabric::assemble(fabric, &fabric_rows) {
                Ok(fabric) => fabrics.extend(fabric),
                Err(message) => problems.extend(at_row(&rows, Kind::Fabric, &fabric.id, message)),
            }
        }
        let table = Self {
            cores: build(&rows, Kind::Core),
            fabrics,
            plies: build(&rows, Kind::Ply),
            fibres: build(&rows, Kind::Fibre),
            resins: build(&rows, Kind::Resin),
            coats: build(&rows, Kind::Coat),
            boards: build(&rows, Kind::Board),
            fillers: build(&rows, Kind::Filler),
            conduits: build(&rows, Kind::Conduit),
            alloys: build(&rows, Kind::Alloy),
            fasteners: build(&rows, Kind::Fastener),
            threads: build(&rows, Kind::Thread),
            screws: build(&rows, Kind::Screw),
            inserts: build(&rows, Kind::Insert),
            potted_inserts: build(&rows, Kind::PottedInsert),
            rivets: build(&rows, Kind::Rivet),
            studs: build(&rows, Kind::Stud),
            adhesives: build(&rows, Kind::Adhesive),
            lubrications: build(&rows, Kind::Lubrication),
            bodies: build(&rows, Kind::Body),
            galvanics: build(&rows, Kind::Galvanic),
            sources: layers.sources.into_values().collect(),
            rows,
        };
        table.check_references(problems);
        table
    }

    /// Rows name fibres, threads and forms; the names must exist.
    fn check_references(&self, problems: &mut Vec<TableProblem>) {
        let fibres = self.fabrics.iter().flat_map(|f| f.parts.iter().map(|p| (Kind::Fabric, &f.id, &p.fibre)));
        for (kind, id, fibre) in fibres.chain(self.plies.iter().map(|p| (Kind::Ply, &p.id, &p.fibre))) {
            if let Err(unknown) = self.fibre(fibre) {
                problems.extend(at_row(&self.rows, kind, id, unknown.to_string()));
            }
        }
        let inserts = self.inserts.iter().map(|row| (Kind::Insert, &row.id, &row.thread));
        let potted = self.potted_inserts.iter().map(|row| (Kind::PottedInsert, &row.id, &row.thread));
        let studs = self.studs.iter().map(|row| (Kind::Stud, &row.id, &row.thread));
        for (kind, id, thread) in inserts.chain(potted).chain(studs) {
            if let Err(unknown) = self.thread(thread) {
                problems.extend(at_row(&self.rows, kind, id, unknown.to_string()));
            }
        }
        let plies = self.plies.iter().map(|row| (Kind::Ply, &row.id, &row.form, "form", &PLY_FORMS[..]));
        let screws = self.screws.iter().map(|row| (Kind::Screw, &row.id, &row.form, "form", &SCREW_FORMS[..]));
        let couples = self.galvanics.iter().map(|row| {
            let severity = &row.severity;
            (Kind::Galvanic, &row.id, severity, "severity", &SEVERITIES[..])
        });
        for (kind, id, word, what, words) in plies.chain(screws).chain(couples) {
            if !words.contains(&word.as_str()) {
                let message = format!("{what} `{word}` of a {} is none of {}", kind.word(), words.join(", "));
                problems.extend(at_row(&self.rows, kind, id, message));
            }
        }
    }

    lookups! {
        /// A family of cores by its id.
        core, cores: CoreFamily = Core;
        /// A fabric by its id.
        fabric, fabrics: Fabric = Fabric;
        /// A fibre by its id.
        fibre, fibres: Fibre = Fibre;
        /// A resin by its id.
        resin, resins: Resin = Resin;
        /// A coat by its id.
        coat, coats: Coat = Coat;
        /// A backing board by its id.
        board, boards: Board = Board;
        /// A putty by its id.
        filler, fillers: Filler = Filler;
        /// A conduit by its id.
        conduit, conduits: Conduit = Conduit;
        /// A metal by its id.
        alloy, alloys: Alloy = Alloy;
        /// A grade of fasteners by its id.
        fastener, fasteners: Fastener = Fastener;
        /// A thread by its id.
        thread, threads: Thread = Thread;
        /// A wood, tapping or lag screw by its id.
        screw, screws: Screw = Screw;
        /// A blind threaded insert by its id.
        insert, inserts: Insert = Insert;
        /// A potted insert by its id.
        potted_insert, potted_inserts: PottedInsert = PottedInsert;
        /// A blind rivet by its id.
        rivet, rivets: Rivet = Rivet;
        /// A glued stud by its id.
        stud, studs: Stud = Stud;
        /// A glue by its id.
        adhesive, adhesives: Adhesive = Adhesive;
        /// A state of the thread at tightening by its id.
        lubrication, lubrications: Lubrication = Lubrication;
        /// A shape of gear by its id.
        body, bodies: Body = Body;
        /// A galvanic couple by its id.
        galvanic, galvanics: Galvanic = Galvanic;
    }
}

const PLY_FORMS: [&str; 3] = [PlyForm::Mat.word(), PlyForm::Woven.word(), PlyForm::Unidirectional.word()];
/// What a screw may be: each has its own formula of withdrawal.
const SCREW_FORMS: [&str; 3] = ["wood", "tapping", "lag"];

fn build<T: Rowed>(rows: &[Row], kind: Kind) -> Vec<T> {
    rows.iter().filter(|row| row.kind == kind).filter_map(T::build).collect()
}

fn at_row(rows: &[Row], kind: Kind, id: &str, message: String) -> Option<TableProblem> {
    let row = rows.iter().find(|row| row.kind == kind && row.id == id)?;
    let place = row.place.clone();
    Some(TableProblem { file: place.file.to_string(), range: place.range, message, help: None })
}
