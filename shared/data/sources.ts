/**
 * How sure a statement is: read in the original; read in a page that quotes it, which the title names; written from memory;
 * derived in this project; or what the trade does.
 */
export const STANDINGS = ['published', 'quoted', 'from memory', 'derived here', 'common practice, no source'] as const
export type Standing = (typeof STANDINGS)[number]

export interface Source {
  readonly title: string
  /** The figures taken from it. */
  readonly usedFor: string
  readonly standing: Standing
}

/** Sources of the figures of a bearing. A formula or a number names its row by the key. */
export const SOURCES = {
  'iso-5593': {
    title: 'ISO 5593, Rolling bearings: Vocabulary, as a list of its terms quotes the edition of 1997 (nlfnorm.cz)',
    usedFor: 'terms: ring, raceway groove, pitch diameter of the ball set, radial internal clearance',
    standing: 'quoted',
  },
  'iso-76': {
    title: "ISO 76, Rolling bearings: Static load ratings, as a bearing trader's page quotes it (nck-bearings.com)",
    usedFor: 'groove radius at most 0.52 (inner) and 0.53 (outer) of the ball diameter, the usual range in steel',
    standing: 'quoted',
  },
  'iso-1938-1': {
    title:
      'ISO 1938-1, plain limit gauges, as a draft of the Saudi standard carries it over (pdfcoffee.com); what go and no-go stand for, as lecture notes have it (studylib.net/doc/5621457)',
    usedFor: 'go and no-go plug gauges',
    standing: 'quoted',
  },
  'machinerys-handbook-chords': {
    title: "Machinery's Handbook, lengths of chords for spacing off the circumference of circles",
    usedFor: 'the closed ring: chord = diameter sin(pi / n)',
    standing: 'published',
  },
  'circular-segment': {
    title: 'CRC Concise Encyclopedia of Mathematics, Segment',
    usedFor: 'width and depth of a groove, and the seat on its edges',
    standing: 'published',
  },
  harris: {
    title:
      'T. A. Harris, Rolling Bearing Analysis: assembly angle as eng-tips.com (thread 289126) quotes it; end play as a bearing maker explains it (nhbb.com, Internal Geometry of Ball Bearings)',
    usedFor: 'assembly angle; end play from conformity and clearance',
    standing: 'quoted',
  },
  'asme-b18.6.1': {
    title: 'ASME B18.6.1, Wood Screws, as pages of screw traders quote it (finescrews.com, paradisearticle.com)',
    usedFor: 'shank and head of the smallest screw that holds a split ring',
    standing: 'quoted',
  },
  'jcgm-100': {
    title: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement, 5.1.2 (iso.org/sites/JCGM)',
    usedFor: 'root of the sum of squares: the law of propagation of uncertainty',
    standing: 'published',
  },
  'jcgm-101': {
    title:
      'JCGM 101:2008, Propagation of distributions using a Monte Carlo method, as a public library follows it step by step (ppernot/rgumlib, gumS1); the shortest interval as its final draft lists it (docslib.org/doc/13398137)',
    usedFor: 'trials, the shortest interval of 95 %, and when the figures have settled',
    standing: 'quoted',
  },
  xoshiro: {
    title:
      'D. Blackman, S. Vigna, xoshiro128++, with its first words as the tests of the Rust library rand_xoshiro quote them',
    usedFor: 'the random numbers of trials: the same for the same seed, on every machine',
    standing: 'quoted',
  },
  derived: {
    title: 'Geometry of rigid bearings, derived in this project and tested by a second method',
    usedFor: 'the gap of a full ring and its slopes, how the last of it goes in, and clearances',
    standing: 'derived here',
  },
} as const satisfies Readonly<Record<string, Source>>

/** Sources of sizes that a request left open: a page marks its sizes with these, and needs no others. */
export const SIZE_SOURCES = {
  trade: {
    title: 'Common practice of makers',
    usedFor: 'every default, and the limits at which a warning is given',
    standing: 'common practice, no source',
  },
  'fpl-variation': {
    title: 'Wood Handbook, chapter 4: coefficient of variation of shrinkage about 15 %, from memory',
    usedFor: 'how much boards of one species differ in their movement',
    standing: 'from memory',
  },
} as const satisfies Readonly<Record<string, Source>>

/** Sources of the figures of woods, boards, screws and the weather. A design alone does not need them. */
export const DATA_SOURCES = {
  'fpl-13-5': {
    title: 'Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010), Table 13-5, row read',
    usedFor: 'how a wood moves across the grain, per % of moisture content',
    standing: 'published',
  },
  'fpl-13-5-rederived': {
    title: 'Wood Handbook (FPL-GTR-190), Table 13-5, from memory; its shrinkage in Table 4-3 or 4-4 gives the same',
    usedFor: 'how a wood moves across the grain, per % of moisture content',
    standing: 'from memory',
  },
  'fpl-13-5-memory': {
    title:
      'Wood Handbook (FPL-GTR-190), Table 13-5, from memory; of teak and true hickory the figure along the growth rings was seen (flooringartists.com)',
    usedFor: 'how a wood moves across the grain, per % of moisture content: treat as a guess',
    standing: 'from memory',
  },
  'timber-trade': {
    title: 'German timber trade, knowledge pages, Quellen und Schwinden, figure 4-5 (the measurements were not seen)',
    usedFor:
      'how woods from outside North America move, per % of moisture content; their botanical names are from memory',
    standing: 'quoted',
  },
  'fpl-13-3': {
    title: 'Wood Handbook (FPL-GTR-190), equations 13-2 and 13-3, size against moisture content',
    usedFor: 'how a size follows its moisture content, up to fibre saturation',
    standing: 'published',
  },
  'fpl-4-5': {
    title:
      'W. T. Simpson, FPL 190 (1973), as a public source file quotes it; Wood Handbook (FPL-GTR-282, 2021), equation 4-5',
    usedFor: 'equilibrium moisture content from temperature and relative humidity',
    standing: 'quoted',
  },
  'fpl-4-longitudinal': {
    title: 'Wood Handbook, chapter 4, as the American Wood Council quotes it (awc.org): 0.1 to 0.2 % along the grain',
    usedFor: 'how little wood moves along the grain: the middle of that range',
    standing: 'quoted',
  },
  'fpl-plywood': {
    title: 'Wood Handbook, chapter on wood-based composites, as a public source file quotes it: about 0.02 % per %',
    usedFor: 'how cross-laminated plywood moves in its plane',
    standing: 'quoted',
  },
  'fpl-plywood-thickness': {
    title: 'Thickness swelling of plywood, about that of solid wood across the grain, from memory',
    usedFor: 'how plywood moves in its thickness: treat as a guess',
    standing: 'from memory',
  },
  'sorption-hysteresis': {
    title:
      'Wood that has dried holds about 2.5 % more moisture than wood that took it up, in boards over 15 mm thick and 100 mm wide, as a page on timber quotes (century21heritage.net)',
    usedFor: 'wood may be up to half of that damper or drier than the equation says for the air',
    standing: 'quoted',
  },
  'fpl-5-1': {
    title: 'Wood Handbook, Table 5-1, elastic ratios, rounded over the common woods of each group',
    usedFor:
      'stiffness across the grain and in shear over stiffness along it: segmented rings, and woods without ratios of their own',
    standing: 'from memory',
  },
  'fpl-5-3b': {
    title:
      'Wood Handbook (FPL-GTR-282, 2021), Table 5-3b, as a public transcription quotes it (xylarium, species.json)',
    usedFor: 'specific gravity, strength across the grain, side hardness and stiffness at 12 % of moisture',
    standing: 'quoted',
  },
  'fpl-5-5b': {
    title: 'Wood Handbook (FPL-GTR-282, 2021), Table 5-5b, imported woods, as the same transcription quotes it',
    usedFor: 'specific gravity of the green wood, and side hardness at 12 % of moisture',
    standing: 'quoted',
  },
  'segmented-ring': {
    title: 'Elastic ring of straight-grained pieces with glued miters, in plane stress, by the method of least energy',
    usedFor: 'how a ring glued from segments moves: derived in this project and checked against finite elements',
    standing: 'derived here',
  },
  'fpl-5-11': {
    title: 'Wood Handbook, Table 5-11, strength and stiffness by specific gravity',
    usedFor: 'stiffness and tension across the grain in segmented rings, of woods without printed values',
    standing: 'from memory',
  },
  'ball-materials': {
    title:
      'Soda-lime glass (nature.com, s41598-021-04045-6; makeitfrom.com) and acrylic (makeitfrom.com, designerdata.nl), within 5 %',
    usedFor: 'density and stiffness of balls of glass and acrylic; hardness as their pages have it, rounded',
    standing: 'quoted',
  },
  'bearing-steel': {
    title: 'Bearing steel 52100, as pages of steel traders quote it (stindia.com; astmsteel.com), density rounded',
    usedFor: 'density, stiffness and hardness of balls of steel',
    standing: 'quoted',
  },
  'acrylic-humidity': {
    title:
      'Maker of extruded acrylic sheet, as a maker of skylights quotes it (eztopsworldwide.com): 0.2, 0.3 and 0.6 %',
    usedFor: 'how acrylic balls grow at 60, 80 and 100 % of humidity',
    standing: 'quoted',
  },
  'ps-20': {
    title:
      'Voluntary Product Standard PS 20, American Softwood Lumber Standard, Table 3, as engineeringtoolbox.com quotes it',
    usedFor: 'nominal and least dressed sizes of softwood boards and dimension lumber',
    standing: 'quoted',
  },
  'iso-2768-1': {
    title:
      'ISO 2768-1:1989, General tolerances: linear dimensions, class c, as a sheet on it quotes it (scribd.com/document/585640440; up to 6 mm as other pages have it, for that sheet has 0.2)',
    usedFor: 'how far a size on a drawing without a tolerance of its own may be off',
    standing: 'quoted',
  },
  nhla: {
    title:
      'NHLA Rules for Hardwood and Cypress, as engineeringtoolbox.com and woodbin.com quote them; 10/4 from memory',
    usedFor: 'thickness of hardwood, rough and surfaced on two sides',
    standing: 'quoted',
  },
  'en-1313': {
    title: 'EN 1313-1 and EN 1313-2, Round and sawn timber: Preferred sizes of softwood and hardwood',
    usedFor: 'thicknesses in which metric sawmills cut boards, where sizes are in millimetres',
    standing: 'from memory',
  },
  'gbt-922': {
    title:
      'GB/T 922, Wood screw threads, as korea-transmission.com quotes it; gewindebohrer.de quotes DIN 7998 for the same',
    usedFor: 'core of metric wood screws',
    standing: 'quoted',
  },
  'din-97': {
    title:
      'DIN 97, Slotted countersunk wood screws, as a screw trader quotes it (mpi-inox.odoo.com), 6 mm as the same quotes DIN 95; the angle is that of DIN 963, whose heads are the same (util-air-sur.odoo.com)',
    usedFor: 'heads of metric wood screws, and their angle of 90 degrees',
    standing: 'quoted',
  },
  'wood-screw-holes': {
    title:
      'Wood-screw pilot holes, l-36.com: mean root diameter, clearance, pilots of 70 % (softwood) and 90 % of the root',
    usedFor: 'pilot and clearance holes; other tables differ by up to 1/32 in',
    standing: 'published',
  },
  'screw-withdrawal': {
    title:
      'Allowable withdrawal of wood screws from side grain, 2850 G2 D lbf per inch, as engineeringtoolbox.com gives it',
    usedFor: 'what holds the halves of a split ring together when it turns',
    standing: 'quoted',
  },
  'screw-head-angle': {
    title: "Head angle of 82 degrees, as a magazine quotes the standard (Woodworker's Journal, April 2010)",
    usedFor: 'depth of the countersink',
    standing: 'quoted',
  },
  'band-saw-manuals': {
    title:
      'Manuals of two band saws, doityourself.com, woodworkingnetwork.com; where they disagree the larger radius is taken',
    usedFor: 'least radius that a band-saw blade turns',
    standing: 'published',
  },
  'lathe-speed': {
    title: 'Rule of woodturners: diameter in inches times revolutions a minute between 6000 and 9000',
    usedFor: 'turning speed from the diameter of the blank',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>

/** Sources of the figures of loads and speeds. */
export const LOAD_SOURCES = {
  hertz: {
    title:
      'H. Hertz 1881, K. L. Johnson 1985, as Rules of Thumb for Mechanical Engineers quotes them for spheres (fliphtml5.com/zroi/gnce, page 242); the ellipse after the same',
    usedFor: 'contact of ball and groove, how much of a dent springs back',
    standing: 'quoted',
  },
  sjovall: {
    title:
      'R. Stribeck 1901, H. Sjovall 1933: load integrals, 4.37 and 4.08, as a catalogue of bearings quotes them (scribd.com/document/403457064)',
    usedFor: 'how balls share a radial load, with play',
    standing: 'quoted',
  },
  'harris-rolling': {
    title:
      "How a rolling bearing's parts turn (T. A. Harris, Rolling Bearing Analysis, chapter 8), as pages on its frequencies quote it (iotbearings.com; vibromera.eu)",
    usedFor: 'how fast balls roll and travel round',
    standing: 'quoted',
  },
  koczan: {
    title: "Koczan, Karwat, Kozakiewicz, Journal of Wood Science 67 (2021): hardness of wood by Meyer's law",
    usedFor: 'the force on a ball pressed into wood is proportional to the 5/2 power of the width of the mark',
    standing: 'published',
  },
  'astm-d143': {
    title:
      'ASTM D143, side hardness (Janka), as a page on floors quotes it (porterhardwoodflooring.com): 11.28 mm, 100 square millimetres',
    usedFor: 'hardness as a pressure: a ball of 0.444 in pressed in to half its diameter',
    standing: 'quoted',
  },
  'rotating-disc': {
    title:
      'J. E. Shigley, C. R. Mischke, Mechanical Engineering Design, 5th edition, rotating rings, as engineersedge.com quotes it',
    usedFor: 'the hoop stress of a ring that turns',
    standing: 'quoted',
  },
  'fpl-5-1-species': {
    title: 'Wood Handbook, Table 5-1, elastic ratios of single woods',
    usedFor: 'stiffness across the grain',
    standing: 'from memory',
  },
  'fpl-5-6': {
    title:
      'Wood Handbook, Table 5-6, average coefficients of variation of clear wood: that of hardness from memory, for the copy that was seen breaks off above its row (fliphtml5.com/kbpub/hdrb/Wood_Handbook/125)',
    usedFor: 'how far the hardness of single boards lies from the average',
    standing: 'from memory',
  },
  'wood-fatigue': {
    title:
      'Fatigue properties of wood at different load ratios tested at 50 Hz and 20 kHz, as its abstract has it (discovery.researcher.life): sycamore maple bears 75 % of its strength, give or take 7, a million times in compression; two standard deviations less are taken',
    usedFor: 'what is left of the strength under a load that comes back some million times',
    standing: 'quoted',
  },
  'madison-curve': {
    title:
      'L. W. Wood 1951, the Madison curve, as Forests 12 (2021), 1148, quotes it: 18.3 + 108.4 t^-0.0464 %, t in seconds',
    usedFor: 'what is left of the strength under a load that stays for ten years',
    standing: 'quoted',
  },
  'rolling-ballpark': {
    title:
      'Page of a machine shop on rolling friction, 0.06 in of lever arm for wood on wood, a ballpark by its own word',
    usedFor: 'the upper end of what wooden balls take to roll',
    standing: 'published',
  },
  'load-derived': {
    title:
      'Derived in this project from those: the dent in a groove, groove edges, an ellipse as long as the groove is wide, a turntable whose plate is pushed aside',
    usedFor: 'dents, the loads that leave them, and the speeds at which a plate goes',
    standing: 'derived here',
  },
  'load-trade': {
    title: 'Common practice',
    usedFor:
      'the dent that is still acceptable, 120 turns a minute by hand, speeds of rubbing and of glass, runout, how hard balls are to roll, the share of the strength across the grain that a ring may use',
    standing: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, Source>>

export const ALL_SOURCES = { ...SOURCES, ...SIZE_SOURCES, ...DATA_SOURCES, ...LOAD_SOURCES }

export type SourceId = keyof typeof ALL_SOURCES

/** Sources of a fit correction. */
export const FIT_CORRECTION_SOURCES: readonly SourceId[] = ['jcgm-101', 'derived', 'trade']
