"""Every cited work once, with how it was seen and how strong its evidence is."""

from __future__ import annotations

from dataclasses import dataclass

GRADES = {
    "standard": "a standard, a government manual, a journal",
    "book": "a textbook, a professional body or a university page",
    "recomputed": "a book or journal read through a notebook that works its examples again: the number is the notebook's, not seen in print",
    "engine": "a value computed by independent, widely used software",
    "example": "an unattributed worked example or table, seen second-hand: it checks the arithmetic and is no authority",
    "memory": "from memory: named, but not looked up again",
}


@dataclass(frozen=True)
class Source:
    """A work: `grade` is a key of GRADES, `seen` says how it was read where that was not in the original."""

    title: str
    grade: str
    seen: str = ""

    def __post_init__(self) -> None:
        if self.grade not in GRADES:
            raise ValueError(f"source '{self.title}': grade '{self.grade}' is none of {', '.join(GRADES)}")

    def at(self, place: str) -> Citation:
        return Citation(self, place)


@dataclass(frozen=True)
class Citation:
    """A place in a work; prints as readers see it."""

    source: Source
    place: str

    def __str__(self) -> str:
        seen = self.source.seen or ("from memory" if self.source.grade == "memory" else "")
        seen = f" ({seen})" if seen else ""
        return f"{self.source.title}, {self.place}{seen}"


_RECODED = "through an open notebook that works the book's examples again"

SARKAR = Source("A. K. Sarkar, Fluid Mechanics", "recomputed", _RECODED)
SCHASCHKE = Source("C. Schaschke, Fluid Mechanics: Worked Examples for Engineers", "recomputed", _RECODED)
CENGEL = Source("Y. A. Cengel and J. M. Cimbala, Fluid Mechanics", "recomputed", _RECODED)
DIGHE = Source("Dighe, Hydraulics Made Easy", "recomputed", _RECODED)
ELGER = Source("D. F. Elger et al., Engineering Fluid Mechanics", "book")
USBR = Source("US Bureau of Reclamation, Water Measurement Manual", "standard")
SWMM_MANUAL = Source("US EPA, Storm Water Management Model Reference Manual, vol. II (2017)", "standard")
SWMM_ENGINE = Source("US EPA, Storm Water Management Model 5 engine", "engine", "run through pyswmm")
FLUIDS = Source("fluids 1.3.1, open-channel module", "engine")
SHEN = Source("J. Shen, Discharge Characteristics of Triangular-notch Thin-plate Weirs, USGS (1981)", "standard", "through a printed example")
FRANCIS = Source("J. B. Francis, Lowell Hydraulic Experiments (1855)", "memory")
REHBOCK = Source("T. Rehbock (1929), as in ISO 1438", "standard", "through the source of an R package that cites ISO 1438")
KINDSVATER = Source("C. E. Kindsvater and R. W. Carter (1957), as in ISO 1438", "memory")
TORRICELLI = Source("E. Torricelli, De motu aquarum (1644)", "memory")
NEWTON = Source("I. Newton, Principia, book II, sect. 9 (1687)", "memory")
NUSSELT = Source("W. Nusselt, Die Oberflaechenkondensation des Wasserdampfes (1916)", "memory")
HARTLEY = Source("D. E. Hartley and W. Murgatroyd, Criteria for the break-up of thin liquid layers (1964)", "memory")
DE_GENNES = Source("P.-G. de Gennes et al., Capillarity and Wetting Phenomena (2004)", "memory")
YOUNG = Source("T. Young, An Essay on the Cohesion of Fluids (1805)", "memory")
BERNOULLI = Source("D. Bernoulli, Hydrodynamica (1738)", "memory")
MATH_CENTRAL = Source("Math Central, University of Regina, question QQ.09.07", "book")
MOSCOW = Source("Moscow mathematical papyrus, problem 14, as in R. J. Gillings, Mathematics in the Time of the Pharaohs", "memory")
EUCLID = Source("Euclid, Elements", "memory")
ARCHIMEDES = Source("Archimedes, On the Sphere and Cylinder", "memory")
CIRCLE = Source("Archimedes, Measurement of a Circle", "memory")
NIST_44 = Source("NIST Handbook 44, appendix C", "memory")
WINE_GALLON = Source("Statute 5 Anne c. 27 (1706): the round vessel of the old wine measure", "memory")
TANAKA = Source("M. Tanaka et al., Recommended table for the density of water, Metrologia 38 (2001)", "standard", "constants through open source that cites it")
IAPWS_LIQUID = Source("IAPWS, Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa (2011)", "standard", "through the iapws package")
WAGNER = Source("W. Wagner and A. Pruss (1993), saturation pressure, as in IAPWS SR1-86", "memory")
GIBBS = Source("J. W. Gibbs, On the Equilibrium of Heterogeneous Substances (1878), contact at an edge", "memory")
LAWRENCE = Source("F. E. Lawrence and P. L. Braunworth, Fountain flow of water in vertical pipes (1906)", "memory")
NIOSH_MANUAL = Source("NIOSH, Applications Manual for the Revised Lifting Equation (1994), worked examples", "memory")
NIOSH_US = Source("a textbook chapter on the NIOSH lifting equation that prints its US form beside the metric one", "book", "an excerpt")
IAPWS = Source("IAPWS-IF97 and the IAPWS releases on viscosity (2008) and surface tension (2014)", "standard", "computed with the iapws package")

# reservoir, loads, stability
TERZAGHI = Source("K. Terzaghi and R. B. Peck, Soil Mechanics in Engineering Practice", "memory")
GAUSS = Source("C. F. Gauss, review of Seeber (1831): the densest lattice of spheres", "memory")
UNATTRIBUTED = Source("unattributed worked example", "example", "second-hand")
RAIN_CATCHMENT = Source("Open Source Ecology, page on rainwater catchment", "example")
UFC_DM7 = Source("UFC 3-220-20, Foundations and Earth Structures (2025)", "standard", "through the text carried by the package geotech-references")
UFC_PAVEMENT = Source("UFC 3-250-01, Pavement Design for Roads and Parking Areas", "standard", "through the text carried by the package geotech-references")
GEOTECH = Source("geotech-references 1.4.1, functions to UFC 3-220-20", "engine")
FEMA_259 = Source(
    "FEMA P-259, Engineering Principles and Practices for Retrofitting Flood-Prone Residential Structures, 3rd ed. (2012)",
    "standard",
    "through a copy; its title from memory",
)
IBC_2012 = Source("International Building Code 2012", "standard", "second-hand excerpt")
CITY_CODE = Source("a city building code that is not named where it was read, filled ground or loam", "example", "archived text")
CANADIAN_SOILS = Source("presumed bearing pressures with field tests, Canadian practice", "book", "second-hand; code not named there")
EN_1991_1 = Source("EN 1991-1-1, annex A", "standard", "through a reference page")
EN_1991_4 = Source("EN 1991-1-4", "standard", "second-hand")
ASCE_FORM = Source("wind pressure in the form of ASCE 7 and NSCP, worked example", "example", "second-hand")
NEWTON_LAWS = Source("I. Newton, Principia, axioms or laws of motion (1687)", "memory")
PLANES = Source("Archimedes, On the Equilibrium of Planes", "memory")
FLOATING = Source("Archimedes, On Floating Bodies", "memory")
VARIGNON = Source("P. Varignon, Nouvelle mecanique ou statique (1725)", "memory")
TIMOSHENKO = Source("S. Timoshenko, Strength of Materials", "memory")
GERE = Source("J. M. Gere, Mechanics of Materials", "memory")
NIST_811 = Source("NIST Special Publication 811, conversion factors", "memory")

# pipes and pumps
EPANET_MANUAL = Source("US EPA, EPANET 2.2 User Manual", "standard")
EPANET_ENGINE = Source("US EPA, EPANET 2.2 engine", "engine", "run through wntr")
FLUIDS_PIPES = Source("fluids 1.3.1, modules friction, fittings and core", "engine")
MAURER = Source("E. Maurer, Hydraulics and Water Resources: Examples Using R", "book")
SUBRAMANYA = Source("K. Subramanya, 1000 Solved Problems in Fluid Mechanics", "recomputed", _RECODED)
CRANE = Source("Crane, Technical Paper 410", "recomputed", "through a library's notebook of its worked problems")
OPENSTAX = Source("OpenStax, College Physics", "book")
OPENSTAX_MEMORY = Source("OpenStax, College Physics", "memory")
HAGEN_POISEUILLE = Source("G. Hagen (1839) and J. L. M. Poiseuille (1840), flow in narrow tubes", "memory")
DARCY_WEISBACH = Source("J. Weisbach (1845) and H. Darcy (1857), flow in pipes", "memory")
COLEBROOK = Source("C. F. Colebrook (1939) with C. M. White (1937), flow in rough pipes", "memory")
SWAMEE_JAIN = Source("P. K. Swamee and A. K. Jain (1976), explicit equations for pipe flow", "memory")
HAALAND = Source("S. E. Haaland (1983), explicit friction factor", "memory")
BLASIUS = Source("H. Blasius (1913), friction of smooth pipes", "memory")
HAZEN_WILLIAMS = Source("A. Hazen and G. S. Williams, Hydraulic Tables (1905)", "memory")
BORDA_CARNOT = Source("J.-C. de Borda (1766) and L. Carnot (1803), sudden widening", "memory")

SIMILARITY = Source("F. M. White, Fluid Mechanics, similarity rules of turbomachines", "memory")

# rills
HENDERSON = Source("F. M. Henderson, Open Channel Flow (1966)", "memory")
CHOW = Source("V. T. Chow, Open-Channel Hydraulics (1959), table of coefficients", "book", "through the tables of fluids 1.3.1")
CENGEL_MEMORY = Source("Y. A. Cengel and J. M. Cimbala, Fluid Mechanics", "memory")
SWMM_CHANNEL = Source("US EPA, Storm Water Management Model 5 engine, kinematic wave", "engine", "run through pyswmm")
LAGRANGE = Source("J.-L. Lagrange (1781), speed of a long wave", "memory")
BENDS = Source("US Army Corps of Engineers, EM 1110-2-1601, Hydraulic Design of Flood Control Channels", "memory")

# falling water, draining, water balance
GALILEO = Source("G. Galilei, Two New Sciences (1638)", "memory")
FAO_56 = Source(
    "FAO Irrigation and Drainage Paper 56 (1998)",
    "standard",
    "through the tests of two open packages that work its examples; example numbers of ch. 3 from memory",
)
MCMAHON = Source(
    "T. A. McMahon et al., Hydrology and Earth System Sciences 17 (2013), supplement S19", "recomputed", "through an open notebook and an open package"
)
SUN_GEOMETRY = Source("spherical trigonometry of the sun's path, as in FAO-56, ch. 3", "memory")
ROUSE = Source("H. Rouse (1936), depth at a free overfall", "memory")
ISO_18481 = Source("ISO 18481:2017, end-depth method", "standard", "only its scope was read")
MUNSON = Source("B. R. Munson et al., Fundamentals of Fluid Mechanics", "memory")
NMSU_104 = Source("New Mexico State University, Guide A-104", "book")

# ground, lining, electrical supply
PLIMPTON = Source("Plimpton 322 (about 1800 BC), as in O. Neugebauer, The Exact Sciences in Antiquity", "memory")
CABLE_LESSON = Source("a training lesson on voltage drop by the tables of BS 7671", "book", "second-hand")
NEC_TABLE_8 = Source("NFPA 70, National Electrical Code, chapter 9, Table 8", "standard", "second-hand; solid copper at 75 degC")
FLEXIBLE_CABLES = Source("BS 7671, table 4F2B, flexible cables", "standard", "through a mirror")
VOLT_DROP_LIMITS = Source("BS 7671, appendix 4, limits of voltage drop at 230 V", "standard", "second-hand")
CALTRANS = Source("Caltrans, Trenching and Shoring Manual", "standard", "through the tables carried by the package geotech-references")
MOHR = Source("C.-A. de Coulomb (1776) and O. Mohr (1882), strength of earth", "memory")
ROOT_AREA = Source("BS 5837:2012, trees near construction", "standard", "through survey reports that quote it")
DIGGING_PITS = Source("a planners' table of hand digging in pits of at most 2 m2 and 1.5 m", "book", "planningplanet.com/wiki/422684")
DIGGING_TRENCHES = Source("a training table of labour in trenches up to 1 m", "book", "menlo-academy.com, labour factors of excavation")
FRIDGE = Source("worked example of a refrigerator's energy", "example", "second-hand")

# lifting
NIOSH = Source(
    "NIOSH, Applications Manual for the Revised Lifting Equation (1994)", "standard", "multipliers through a summary; the ends of its range from memory"
)
NIOSH_EXAMPLE = Source("worked example of the NIOSH lifting equation", "example", "second-hand")
SLING_TABLE = Source("table of load angle factors of slings, as in common rigging guidance", "memory")
DECIBELS = Source("pages on decibel arithmetic, UCSD Music 270a and 10db.co.uk", "book")
